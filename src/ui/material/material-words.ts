/** Bends, connections, turned strings, routes and comparisons as the rows of a list say them. */
import type { Bend, ComparedPlace, Connection, RouteWeights, Stop, TurnedString } from '#neck';
import { type Degree, makeDegree, makeNoteName } from '#theory';

export const signs = (degree: Degree): string => makeDegree(degree, 'sign');

/** How far a bend goes, in whole steps as players count them. */
export const HOW_FAR = { 1: '½', 2: '1', 3: '1½' } as const;

export const EASE_WORDS = {
  comfortable: 'comfortable',
  hard: 'hard',
  no: 'not practical',
} as const;

/** `♭7 A`, with the chord that it belongs to if that is the next one. */
export function targetInWords({ degree, pitch, of }: Bend, next: string): string {
  const target = `${signs(degree)} ${makeNoteName(pitch, 'sign')}`;
  return of === 'next' ? `${target} of ${next}` : target;
}

const INTERVALS: Readonly<Record<number, string>> = {
  0: 'stays',
  1: 'half step up',
  2: 'whole step up',
  [-1]: 'half step down',
  [-2]: 'whole step down',
};

const wayOf = ({ from, to, bend }: Connection): string => {
  if (bend) return `string ${from.string}: bent at fret ${from.fret}`;
  if (from.string !== to.string) {
    return `strings ${from.string} to ${to.string}: fret ${from.fret} to ${to.fret}`;
  }
  return from.fret === to.fret
    ? `string ${from.string}: fret ${from.fret}`
    : `string ${from.string}: fret ${from.fret} to ${to.fret}`;
};

/** “3 → R, half step up, string 2: fret 8 to 9”. */
export function connectionInWords(connection: Connection): string {
  const { fromDegree, toDegree, semitones } = connection;
  const degrees = `${signs(fromDegree)} → ${signs(toDegree)}`;
  return `${degrees}, ${INTERVALS[semitones] ?? ''}, ${wayOf(connection)}`;
}

/** “3 drops from fret 9 to 8: ♭3”. */
export function turnedStringInWords({ string, from, to }: TurnedString): string {
  if (from && to) {
    if (from.fret === to.fret) return `${signs(from.degree)} is now ${signs(to.degree)}`;
    const way = to.fret < from.fret ? 'drops' : 'rises';
    return `${signs(from.degree)} ${way} from fret ${from.fret} to ${to.fret}: ${signs(to.degree)}`;
  }
  if (to) return `${signs(to.degree)} joins at fret ${to.fret}`;
  return from ? `${signs(from.degree)} on string ${string} is left out` : '';
}

/** What a way asks of the hand. */
export interface WayCost {
  /** How often the hand moves, how far in all, in frets and in millimetres. */
  readonly moves: number;
  readonly frets: number;
  readonly millimetres: number;
  /** Grips wider than four frets. */
  readonly stretches: number;
  readonly barres: number;
}

const NO_COST: WayCost = { moves: 0, frets: 0, millimetres: 0, stretches: 0, barres: 0 };

const FRETS_UNDER_HAND = 4;

function isWide({ grip }: Stop): boolean {
  const held = grip.tones.flatMap(({ finger, fret }) => (finger === undefined ? [] : [fret]));
  return held.length > 0 && Math.max(...held) - Math.min(...held) >= FRETS_UNDER_HAND;
}

/** Adds up a way, step by step; a step without a stop leaves the hand where it was. */
export function wayCost(stops: readonly (Stop | undefined)[]): WayCost {
  const all = stops.flatMap((stop) => stop ?? []);
  return all.reduce((sum, stop, i) => {
    const before = all[i - 1] ?? stop;
    return {
      moves: sum.moves + (before.position === stop.position ? 0 : 1),
      frets: sum.frets + Math.abs(stop.position - before.position),
      millimetres: sum.millimetres + Math.abs(stop.millimetres - before.millimetres),
      stretches: sum.stretches + (isWide(stop) ? 1 : 0),
      barres: sum.barres + (stop.grip.barres.length > 0 ? 1 : 0),
    };
  }, NO_COST);
}

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** “hand moves 9 frets (24 cm) in 4 moves, 2 stretches, 3 barre grips”. */
export function wayInWords(stops: readonly (Stop | undefined)[]): string {
  const { moves, frets, millimetres, stretches, barres } = wayCost(stops);
  const hand =
    moves === 0
      ? 'the hand stays'
      : `the hand moves ${count(frets, 'fret')} (${Math.round(millimetres / 10)} cm) in ${count(moves, 'move')}`;
  const stretched = stretches === 0 ? 'no stretch' : count(stretches, 'stretch', 'stretches');
  const barred = barres === 0 ? 'no barre' : count(barres, 'barre');
  return `${hand}, ${stretched}, ${barred}`;
}

/** More forms than these are not told one by one. */
const FORMS_TOLD = 12;

/** The forms of a way in their order: “E A D G …”. */
export function formsInWords(stops: readonly (Stop | undefined)[]): string {
  const forms = stops.map((stop) => stop?.form.name ?? '–');
  return `${forms.slice(0, FORMS_TOLD).join(' ')}${forms.length > FORMS_TOLD ? ' …' : ''}`;
}

/** What each weight is to a player, and what its number counts. */
export const WEIGHT_WORDS: Readonly<Record<keyof RouteWeights, readonly [string, string]>> = {
  shift: ['Moving the hand', 'for each mm of it'],
  stretch: ['Stretching', 'for each mm beyond comfort'],
  finger: ['Fingers held down', 'mm for each'],
  barre: ['Barres', 'mm for each'],
  unusual: ['C and G forms up the neck', 'mm for each C, twice for G'],
  away: ['Straying from where the hand belongs', 'for each mm'],
  otherForm: ['Leaving the form that is carried', 'mm each time'],
};

/** Whether a place belongs to both, or only to the first or the second. */
export type Share = 'both' | 'first' | 'second';

export const shareOf = ({ first, second }: ComparedPlace): Share =>
  first && second ? 'both' : first ? 'first' : 'second';

export interface Sharing {
  readonly both: readonly ComparedPlace[];
  readonly first: readonly ComparedPlace[];
  readonly second: readonly ComparedPlace[];
}

export const sharing = (places: readonly ComparedPlace[]): Sharing => ({
  both: places.filter((place) => shareOf(place) === 'both'),
  first: places.filter((place) => shareOf(place) === 'first'),
  second: places.filter((place) => shareOf(place) === 'second'),
});

/** `1:14 2:15 3:14`, as a sentence lists places: string and fret. */
export const placesInWords = (places: readonly ComparedPlace[]): string =>
  places.map(({ string, fret }) => `string ${string} fret ${fret}`).join(', ');

/** What the shared places are to both: “R stays R”, “♭7 is 3”. */
export function degreesShared(places: readonly ComparedPlace[]): readonly string[] {
  const words = places.flatMap(({ first, second }) => {
    if (!first || !second) return [];
    const [here, there] = [signs(first.degree), signs(second.degree)];
    return [here === there ? `${here} stays ${there}` : `${here} becomes ${there}`];
  });
  return [...new Set(words)];
}
