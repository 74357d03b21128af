/** Turned forms, bends, connections, routes and fingerings in words. */
import type { Lens } from '#lesson';
import type { Bend, Connection, Stop, TurnedString } from '#neck';
import { compareDegrees, type Degree, makeDegree, makeNoteName } from '#theory';
import { roman } from './roman.ts';
import type { Compared, Fingered, RouteStudy, TurnedForm, Unsaid } from './store/types.ts';
import { numberWord } from './words.ts';
import { symbolInSigns } from './words-aloud.ts';

const inSigns = (degree: Degree): string => makeDegree(degree, 'sign');

function moveInWords({ string, from, to }: TurnedString): string | undefined {
  if (from && to) {
    if (from.fret === to.fret) return undefined;
    const way = to.fret < from.fret ? 'drops' : 'rises';
    return `the ${inSigns(from.degree)} ${way} from fret ${from.fret} to ${to.fret}`;
  }
  if (to) return `the ${inSigns(to.degree)} joins at fret ${to.fret} on string ${string}`;
  return from && `the ${inSigns(from.degree)} on string ${string} is left out`;
}

/** “Turned minor, Am: the 3 drops from fret 9 to 8”. */
export function turnedInWords({ turn, symbol, from, moves, playable }: TurnedForm): string {
  const head = `Turned ${turn.name}, ${symbolInSigns(symbol)}`;
  const form = from.chosen?.form.name;
  if (!playable) return `${head}: four fingers cannot hold it in the ${form ?? 'present'} form`;
  const words = moves.flatMap((move) => moveInWords(move) ?? []);
  return `${head}: ${words.length > 0 ? words.join('; ') : 'every tone stays'}`;
}

const STEPS = ['', 'a half step', 'a whole step', 'one and a half steps'] as const;

const EASES = { comfortable: 'comfortable', hard: 'hard', no: 'not practical' } as const;

/** “Best bend: string 2 from fret 8 up a whole step to 5 A, comfortable”. */
export function bendInWords(bend: Bend | undefined, next: string | undefined): string {
  if (!bend || bend.ease === 'no') return 'No bend under the hand is practical';
  const whose = bend.of === 'next' && next !== undefined ? ` of ${symbolInSigns(next)}` : '';
  const target = `${inSigns(bend.degree)} ${makeNoteName(bend.pitch, 'sign')}${whose}`;
  const start = `string ${bend.string} from fret ${bend.fret}`;
  return `Best bend: ${start} up ${STEPS[bend.steps]} to ${target}, ${EASES[bend.ease]}`;
}

function connectionInWords(connection: Connection): string {
  const { from, to, semitones, fromDegree, toDegree, bend } = connection;
  const [before, after] = [inSigns(fromDegree), inSigns(toDegree)];
  const where = `on string ${to.string}`;
  if (semitones === 0) {
    const becomes = before === after ? 'stays' : `stays and becomes ${after}`;
    return `${before} ${becomes} ${where}`;
  }
  const way = `${semitones > 0 ? 'rises' : 'falls'} ${STEPS[Math.abs(semitones)]} to ${after}`;
  const how = bend ? ', bent' : '';
  return from.string === to.string
    ? `${before} ${way} ${where}${how}`
    : `${before} ${way} from string ${from.string} to ${to.string}`;
}

const degreesOf = ({ fromDegree, toDegree }: Connection): string =>
  `${makeDegree(fromDegree)}>${makeDegree(toDegree)}`;

/** The two best connections that are not the same on other strings. */
export function connectionsInWords(
  connections: readonly Connection[],
  next: string | undefined,
): string {
  const [best] = connections;
  if (!best || next === undefined) return 'Nothing under the hand leads to another chord';
  const second = connections.find((one) => degreesOf(one) !== degreesOf(best));
  const words = [best, ...(second ? [second] : [])].map(connectionInWords);
  return `To ${symbolInSigns(next)}: ${words.join('; ')}`;
}

const stopInWords = ({ form, position }: Stop): string =>
  `the ${form.name} form at ${roman(position)}`;

function kindInWords({ kind, goal, form }: RouteStudy, home: number): string {
  if (kind === 'stay') return `Route staying near ${roman(home)}`;
  if (kind === 'carry') return `Route carrying the ${form ?? 'nearest'} form`;
  return goal ? `Route to ${roman(goal.position)} by bar ${goal.bar}` : 'Route';
}

/** “Route staying near V, step three of eight: the E form at V, then the A form at V”. */
export function routeInWords(route: RouteStudy, cursor: number, home: number): string {
  const head = kindInWords(route, home);
  const { progress, error } = route;
  if (progress) return `${head}: ${progress.done} of ${progress.of} chords planned`;
  if (route.stopped) return `${head}: planning was stopped`;
  const step = route.stepOf[cursor] ?? -1;
  const stops = route.routes[route.chosen]?.stops ?? [];
  const here = stops[step];
  const next = stops.slice(step + 1).find((stop) => stop);
  const way = [here, here && next].flatMap((stop) => (stop ? [stopInWords(stop)] : []));
  const count = `step ${numberWord(step + 1)} of ${numberWord(route.steps.length)}`;
  const where = here ? `, ${count}: ${way.join(', then ')}` : '';
  return `${head}${where}${error === undefined ? '' : `; ${error}`}`;
}

/** “x7678x is E7♯9: R, 3, ♭7, ♯9”. */
export function fingeredInWords({ text, error, names, chosen, places }: Fingered): string {
  if (error !== undefined) return error;
  const name = names[chosen];
  if (!name) return `${text} has no name that is known`;
  const degrees = places.toReversed().flatMap(({ degree }) => (degree ? [inSigns(degree)] : []));
  const rootless = name.rootless ? ' without its root' : '';
  return `${text} is ${symbolInSigns(name.symbol)}${rootless}: ${degrees.join(', ')}`;
}

const PLACES = ['place', 'places'] as const;

function formsBeside({ name, places }: Compared): string {
  const shared = places.filter(({ first, second }) => first && second).length;
  const left = places.filter(({ second }) => !second).length;
  const added = places.length - shared - left;
  const word = shared === 1 ? PLACES[0] : PLACES[1];
  const counts = `${numberWord(left)} left, ${numberWord(added)} new`;
  return `Beside the ${name} form: ${numberWord(shared)} ${word} shared, ${counts}`;
}

function chordsBeside({ name, places }: Compared): string {
  const kept = places
    .flatMap(({ first, second }) =>
      first && second ? [[first.degree, second.degree] as const] : [],
    )
    .sort(([a], [b]) => compareDegrees(a, b))
    .map(([now, then]) => `${inSigns(now)} is its ${inSigns(then)}`);
  const words = [...new Set(kept)].join(', ');
  return `Beside ${symbolInSigns(name)}: ${words === '' ? 'no tone in common' : words}`;
}

/** “Beside the C form: three places shared, two left, one new”; “Beside D9: R is its 5”. */
export const comparedInWords = (compared: Compared): string =>
  compared.comparison.kind === 'form' ? formsBeside(compared) : chordsBeside(compared);

const BY_LENS: { readonly [One in Lens]: (study: Unsaid) => string | undefined } = {
  none: () => undefined,
  turn: () => undefined,
  bends: ({ bends, nextSymbol }) => bendInWords(bends[0], nextSymbol),
  connections: ({ connections, nextSymbol }) => connectionsInWords(connections, nextSymbol),
  fingering: ({ fingered }) => fingered && fingeredInWords(fingered),
  compare: ({ compared }) => compared && comparedInWords(compared),
  route: ({ route, cursor, of }) => route && routeInWords(route, cursor, of.position),
};

/** What a turned form and the lens that is on have to say, in sentences. */
export function materialInWords(study: Unsaid): readonly string[] {
  const { turned, of } = study;
  const seen = BY_LENS[of.lens](study);
  return [...(turned ? [turnedInWords(turned)] : []), ...(seen === undefined ? [] : [seen])];
}
