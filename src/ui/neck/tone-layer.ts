/**
 * The hottest part of the page: some fifty tones change with every move of the cursor. What changed is
 * put into the page by hand, past React, which for that would compare and keep seventy elements.
 */
import { LABEL_LOOKS, type Labelling, LOOKS, outlinePaths } from './looks.ts';
import type { ToneMark } from './marks.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Two corners of the square around a mark. */
const corners = ({ x, y, radius }: ToneMark): string =>
  `${x - radius},${y - radius} ${x + radius},${y + radius}`;

/** What the element of a tone says of it to programs from outside. */
const SAID = [
  ['data-pitch', 'pitch'],
  ['data-degree', 'degree'],
  ['data-kind', 'kind'],
  ['data-reach', 'reach'],
  ['data-label', 'label'],
] as const satisfies readonly (readonly [string, keyof ToneMark])[];

/** Where a tone is and what it means; what is seen of it is part of the paths that all tones share. */
interface Place {
  readonly element: Element;
  /** What the element says, shown or not. */
  mark: ToneMark | undefined;
  /** The drawing that it was last part of. */
  drawing: number;
}

function newPlace({ string, fret }: ToneMark): Place {
  // `points` is no property of style, so that none is styled anew.
  const element = document.createElementNS(SVG, 'polygon');
  element.setAttribute('data-string', String(string));
  element.setAttribute('data-fret', String(fret));
  return { element, mark: undefined, drawing: -1 };
}

const sameSpot = (a: ToneMark | undefined, b: ToneMark): boolean =>
  a?.x === b.x && a.y === b.y && a.radius === b.radius;

function say({ element, mark: before }: Place, mark: ToneMark): void {
  for (const [name, field] of SAID)
    if (before?.[field] !== mark[field]) element.setAttribute(name, mark[field]);
  if (!sameSpot(before, mark)) element.setAttribute('points', corners(mark));
}

/** Finds the place of a mark in a group; one that is not there yet is made. */
function placeFinder(group: Element): (mark: ToneMark) => Place {
  const places = new Map<string, Place>();
  return (mark) => {
    const known = places.get(mark.key);
    if (known) return known;
    const place = newPlace(mark);
    places.set(mark.key, place);
    group.append(place.element);
    return place;
  };
}

/** Keeps the `data-tone` elements in a group in step with marks, one element for every place. */
function placesIn(group: Element): (marks: readonly ToneMark[]) => void {
  const placeOf = placeFinder(group);
  let shown: readonly Place[] = [];
  let drawing = 0;
  const show = (mark: ToneMark): Place => {
    const place = placeOf(mark);
    if (place.mark !== mark) say(place, mark);
    if (place.drawing !== drawing - 1) place.element.setAttribute('data-tone', '');
    place.mark = mark;
    place.drawing = drawing;
    return place;
  };
  return (marks) => {
    drawing++;
    const next = marks.map(show);
    // A place without a tone keeps its element: some chord to come has a tone there.
    for (const place of shown)
      if (place.drawing !== drawing) place.element.removeAttribute('data-tone');
    shown = next;
  };
}

/** Sets `d` of the elements, in their order, as far as it changed. */
function pathsIn(elements: readonly Element[]): (paths: readonly string[]) => void {
  let before: readonly string[] = [];
  return (paths) => {
    elements.forEach((element, i) => {
      const path = paths[i] ?? '';
      if (path !== (before[i] ?? '')) element.setAttribute('d', path);
    });
    before = paths;
  };
}

/** Puts tones into the page. */
export interface ToneLayer {
  readonly group: Element;
  /** What is seen of them. */
  readonly draw: (marks: readonly ToneMark[], labels: Labelling) => void;
  /** What they say of themselves, which nobody can ask for while a key is held down. */
  readonly tell: (marks: readonly ToneMark[]) => void;
}

/** The layer in a group whose children are a path for each look and for each look of a label. */
export function toneLayer(group: Element, places: Element): ToneLayer {
  const setPaths = pathsIn([...group.children]);
  return {
    group,
    draw: (marks, { paths }) => {
      const outlines = outlinePaths(marks);
      setPaths([
        ...LOOKS.map((look) => outlines[look] ?? ''),
        ...LABEL_LOOKS.map((look) => paths[look] ?? ''),
      ]);
    },
    tell: placesIn(places),
  };
}
