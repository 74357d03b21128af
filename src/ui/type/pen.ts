/** Writes text as the outlines of its characters: many labels then are one path on the page. */

/** Where a text is written: its middle along, its baseline across. */
interface Spot {
  readonly x: number;
  readonly y: number;
  /** Height of the type, in the unit of x and y. */
  readonly size: number;
  readonly underlined?: boolean;
}

/** Path data of a text; undefined if it has characters that the face lacks. */
export type Pen = (text: string, spot: Spot) => string | undefined;

/** A character at some size: how far it takes the pen, and path data from where the pen stood. */
interface Glyph {
  readonly advance: number;
  readonly path: string;
}

/** Units to the em of all faces, as scripts/outlines.mjs writes them. */
const EM = 128;

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Characters by their line in a face. */
const glyphsOf = (face: string): ReadonlyMap<string, Glyph> =>
  new Map(
    face.split('\n').map((line) => {
      const [character = '', advance = '', ...path] = line.split(' ');
      return [character, { advance: Number(advance), path: path.join(' ') }];
    }),
  );

function scaled({ advance, path }: Glyph, scale: number): Glyph {
  const numbers = path.replace(/-?\d+/g, (units) => String(hundredth(Number(units) * scale)));
  return { advance: advance * scale, path: numbers };
}

/** The glyphs of a face at any size, each made once. */
function typeCase(face: string) {
  const glyphs = glyphsOf(face);
  const made = new Map<string, Glyph>();
  return (character: string, size: number): Glyph | undefined => {
    const key = character + size;
    const known = made.get(key);
    if (known) return known;
    const glyph = glyphs.get(character);
    const fresh = glyph && scaled(glyph, size / EM);
    if (fresh) made.set(key, fresh);
    return fresh;
  };
}

/** The line under a text, as shares of the type: how far below the baseline, how thick. */
const UNDER = { below: 0.1, thick: 0.07 };

function underline(x: number, width: number, { y, size }: Spot): string {
  const thick = hundredth(size * UNDER.thick);
  const top = hundredth(y + size * UNDER.below);
  return `M${hundredth(x)} ${top}h${hundredth(width)}v${thick}h${-hundredth(width)}z`;
}

/** A pen for a face of outlines.ts. */
export function penOf(face: string): Pen {
  const glyphAt = typeCase(face);
  return (text, spot) => {
    const glyphs = Array.from(text, (character) => glyphAt(character, spot.size));
    const width = glyphs.reduce((sum, glyph) => sum + (glyph?.advance ?? Number.NaN), 0);
    if (Number.isNaN(width)) return undefined;
    let x = spot.x - width / 2;
    let path = spot.underlined ? underline(x, width, spot) : '';
    for (const glyph of glyphs) {
      path += `M${hundredth(x)} ${spot.y}${glyph?.path ?? ''}`;
      x += glyph?.advance ?? 0;
    }
    return path;
  };
}
