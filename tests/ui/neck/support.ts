import { DEFAULT_SPAN, makeInstrument, millimetres, type Reading, readNeck } from '#neck';
import { type Chord, type Degree, parseDegree, parseNoteName } from '#theory';
import { type LayoutSpec, layoutNeck } from '../../../src/ui/neck/layout.ts';

export function degree(text: string): Degree {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(`no degree: ${text}`);
  return read.value;
}

/** `B: R b3 5 b7` */
export function chord(text: string): Chord {
  const [root = '', tones = ''] = text.split(': ');
  const name = parseNoteName(root);
  if (!name.ok) throw new Error(`no note: ${root}`);
  return { root: name.value, tones: tones.split(' ').map(degree) };
}

const made = makeInstrument({});
if (!made.ok) throw new Error('no standard guitar');
export const GUITAR = made.value;

export const read = (text: string, position: number, colours = ''): Reading =>
  readNeck({
    chord: chord(text),
    position,
    instrument: GUITAR,
    span: DEFAULT_SPAN,
    colours: colours === '' ? [] : colours.split(' ').map(degree),
    spelling: 'exact',
  });

/** A lying neck at the width of a desk. */
export const SPEC: LayoutSpec = {
  width: 1376,
  em: 16,
  strings: 6,
  frets: 22,
  scale: millimetres(648),
  spacing: 'true',
  upright: false,
  leftHanded: false,
  levels: 3,
  sight: 900,
};

export const LAYOUT = layoutNeck(SPEC);
