/** The workspace as the part of the address behind `#`, and back. */
import { formsOf, type InstrumentSpec, makeInstrument, specOf } from '#neck';
import { makeAt, makeDegree, parseAt, parseDegree, parseProgression, sameDegree } from '#theory';
import { BEGINNING, DEFAULT_WORKSPACE } from './defaults.ts';
import { ADDRESS_KEYS, type AddressKey } from './kept.ts';
import { withInstrument } from './own-forms.ts';
import { withoutText } from './route-goal.ts';
import { ROUTES, type Workspace } from './types.ts';
import { LONGEST_PROGRESSION } from './workspace-json.ts';

/** A workspace as an address gives it, and what of the address made no sense, in people's words. */
export interface ReadAddress {
  readonly workspace: Workspace;
  readonly leftOut: readonly string[];
}

/** Takes one value of the address into a workspace that already has those before it. */
type Reader = (text: string, soFar: Workspace) => Workspace | string;

const LONGEST_QUOTE = 40;
const quoted = (text: string): string =>
  text.length > LONGEST_QUOTE ? `“${text.slice(0, LONGEST_QUOTE)}…”` : `“${text}”`;

/** Builds the instrument anew only if something differs: much is remembered for each instrument. */
function withSpec(workspace: Workspace, patch: InstrumentSpec): Workspace | string {
  const before = specOf(workspace.instrument);
  const { gauges, ...rest } = before;
  // Gauges belong to the strings they were set for.
  const retuned = patch.tuning !== undefined && patch.tuning !== before.tuning;
  const wanted = { ...rest, ...(retuned ? {} : { gauges }), ...patch };
  const made = makeInstrument(wanted);
  if (!made.ok) return `expected ${made.error.expected}`;
  const same = JSON.stringify(specOf(made.value)) === JSON.stringify(before);
  return same ? workspace : withInstrument(workspace, made.value);
}

const tuning: Reader = (text, soFar) => withSpec(soFar, { tuning: text });

const frets: Reader = (text, soFar) =>
  withSpec(soFar, { frets: text.trim() === '' ? Number.NaN : Number(text) });

const hand: Reader = (text, soFar) => {
  if (text !== 'left' && text !== 'right') return 'expected left or right';
  return withSpec(soFar, { leftHanded: text === 'left' });
};

const progression: Reader = (text, soFar) => {
  if (text.length > LONGEST_PROGRESSION) return 'it is too long';
  const work = text === soFar.progression ? soFar : withoutText(soFar);
  return { ...work, progression: text, at: BEGINNING };
};

const at: Reader = (text, soFar) => {
  const moment = parseAt(text);
  if (!moment.ok) return `expected ${moment.error.expected.join(', ')}`;
  const { bar, beat } = moment.value;
  const bars = parseProgression(soFar.progression).chart.sections.flatMap((s) => s.bars);
  const metre = bars[bar - 1]?.metre;
  if (bar > Math.max(1, bars.length)) return `the progression has ${bars.length} bars`;
  if (beat >= (metre?.beats ?? 1) + 1) return `bar ${bar} has ${metre?.beats ?? 1} beats`;
  return { ...soFar, at: moment.value };
};

const position: Reader = (text, soFar) => {
  const fret = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  const last = soFar.instrument.frets;
  return fret >= 1 && fret <= last
    ? { ...soFar, position: fret }
    : `expected a fret from 1 to ${last}`;
};

const form: Reader = (text, soFar) => {
  const names = formsOf(soFar.instrument).map((f) => f.name);
  return names.includes(text) ? { ...soFar, form: text } : `expected ${names.join(', ')}`;
};

const isRoute = (text: string): text is (typeof ROUTES)[number] =>
  ROUTES.some((route) => route === text);

const route: Reader = (text, soFar) => {
  return isRoute(text) ? { ...soFar, route: text } : `expected ${ROUTES.join(', ')}`;
};

const READERS: { readonly [Key in Exclude<AddressKey, 'show'>]: Reader } = {
  tuning,
  frets,
  hand,
  progression,
  at,
  position,
  form,
  route,
};

/** Instrument before position and form, progression before the moment in it. */
const READING_ORDER = [
  'tuning',
  'frets',
  'hand',
  'progression',
  'at',
  'position',
  'form',
  'route',
] as const satisfies readonly (keyof typeof READERS)[];

/** Of a list of degrees, those that are understood stay. */
function readShow(text: string, soFar: ReadAddress): ReadAddress {
  const words = text.split(',').filter((word) => word !== '');
  return words.reduce(({ workspace, leftOut }, word) => {
    const degree = parseDegree(word);
    if (!degree.ok) {
      const why = `show ${quoted(word)}: expected ${degree.error.expected.join(' or ')}`;
      return { workspace, leftOut: [...leftOut, why] };
    }
    const known = workspace.show.some((d) => sameDegree(d, degree.value));
    const show = known ? workspace.show : [...workspace.show, degree.value];
    return { workspace: { ...workspace, show }, leftOut };
  }, soFar);
}

/** What an address means that does not say it; of the other keys, the work itself stays as it was. */
const USUAL = specOf(DEFAULT_WORKSPACE.instrument);
const UNSAID: Readonly<Partial<Record<AddressKey, string>>> = {
  tuning: USUAL.tuning,
  frets: String(USUAL.frets),
  hand: 'right',
  position: String(DEFAULT_WORKSPACE.position),
};

function blank(base: Workspace): Workspace {
  const { form: _form, route: _route, ...rest } = base;
  return { ...rest, show: DEFAULT_WORKSPACE.show };
}

function withUnsaid(key: keyof typeof READERS, workspace: Workspace): Workspace {
  const text = UNSAID[key];
  const next = text === undefined ? workspace : READERS[key](text, workspace);
  return typeof next === 'string' ? workspace : next;
}

/** Takes in one key; one that makes no sense is as if it were not there. */
function withKey(read: ReadAddress, key: keyof typeof READERS, text: string | null): ReadAddress {
  const { workspace, leftOut } = read;
  const next = text === null ? withUnsaid(key, workspace) : READERS[key](text, workspace);
  if (typeof next !== 'string') return { workspace: next, leftOut };
  const why = `${key} ${quoted(text ?? '')}: ${next}`;
  return { workspace: withUnsaid(key, workspace), leftOut: [...leftOut, why] };
}

const isAddressKey = (key: string): key is AddressKey => ADDRESS_KEYS.some((k) => k === key);

/**
 * Reads the part behind `#`, with or without it: a query string. What it does not say is as on a
 * first visit, except the progression with its cursor and all that an address does not carry, which
 * are as in `base`. Never throws; what makes no sense is left out and named.
 */
export function parseAddress(hash: string, base: Workspace): ReadAddress {
  const query = new URLSearchParams(hash.replace(/^#/, ''));
  const unknown = [...new Set(query.keys())].filter((key) => !isAddressKey(key));
  const first: ReadAddress = {
    workspace: blank(base),
    leftOut: unknown.map((key) => `${quoted(key)}: nothing here has that name`),
  };
  const read = READING_ORDER.reduce((soFar, key) => withKey(soFar, key, query.get(key)), first);
  return readShow(query.get('show') ?? '', read);
}

/** The part behind `#` without it. Progression, cursor and position always; the rest unless usual. */
export function makeAddress(workspace: Workspace): string {
  const spec = specOf(workspace.instrument);
  const values: Readonly<Record<AddressKey, string | undefined>> = {
    progression: workspace.progression,
    at: makeAt(workspace.at),
    position: String(workspace.position),
    form: workspace.form,
    tuning: spec.tuning === USUAL.tuning ? undefined : spec.tuning,
    frets: spec.frets === USUAL.frets ? undefined : String(spec.frets),
    hand: spec.leftHanded ? 'left' : undefined,
    show: workspace.show.map((degree) => makeDegree(degree)).join(',') || undefined,
    route: workspace.route,
  };
  const query = new URLSearchParams();
  for (const key of ADDRESS_KEYS) {
    const value = values[key];
    if (value !== undefined) query.set(key, value);
  }
  return query.toString();
}
