import {
  type Chord,
  type Degree,
  midi,
  midiOf,
  type NoteName,
  noteAt,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  semitonesOf,
} from '#theory';
import { copyAt, formsAtHand, nearestCopy } from './at-hand.ts';
import { demandsOf } from './demands.ts';
import { fret, stringNumber } from './places.ts';
import { HAND_FRETS, reachByFret } from './reach.ts';
import type {
  FormAtHand,
  GripTone,
  Reach,
  Reading,
  ReadingQuery,
  Tone,
  ToneKind,
} from './types.ts';

/** What sounds a given number of semitones above the root, when it is of interest. */
interface Sounding {
  readonly degree: Degree;
  readonly name: NoteName;
  readonly kind: Exclude<ToneKind, 'shape'>;
}

type Palette = readonly (Sounding | undefined)[];

function nameOf(chord: Chord, degree: Degree, spelling: ReadingQuery['spelling']): NoteName {
  const name = noteAt(chord.root, degree);
  return spelling === 'plain' ? plainName(name) : name;
}

/** Chord tones and colours by semitones above the root; where both want a place the chord tone has it. */
function paletteOf({ chord, colours, spelling }: ReadingQuery): Palette {
  const palette: (Sounding | undefined)[] = demandsOf(chord).byOffset.map((tone) =>
    tone === undefined
      ? undefined
      : { degree: tone.degree, name: nameOf(chord, tone.degree, spelling), kind: 'chord' },
  );
  for (const degree of colours) {
    const offset = pitchClass(semitonesOf(degree));
    palette[offset] ??= { degree, name: nameOf(chord, degree, spelling), kind: 'colour' };
  }
  return palette;
}

/** The finger that falls on a fret with one finger to each, the outer two stretching. */
const handFinger = (f: number, position: number): number =>
  Math.min(HAND_FRETS, Math.max(0, f - position)) + 1;

function fingerAt(
  held: GripTone | undefined,
  f: number,
  reach: Reach,
  position: number,
): { readonly finger?: number } {
  if (held?.finger !== undefined) return { finger: held.finger };
  return reach === 'hand' || reach === 'stretch' ? { finger: handFinger(f, position) } : {};
}

interface StringContext {
  readonly query: ReadingQuery;
  readonly palette: Palette;
  readonly reach: readonly Reach[];
  readonly chosen: FormAtHand | undefined;
}

/** Nearest first; a form reaches other qualities by dropping a tone rather than by raising it. */
const STEPS_ASIDE = [0, -1, 1] as const;

/** Where four fingers cannot hold the chord: the chord tone within a fret of the form's own place. */
function melodicFret({ query, palette, chosen }: StringContext, index: number): number | undefined {
  const own = chosen?.form.frets[index];
  const open = query.instrument.strings[index];
  if (chosen === undefined || own === undefined || own === null || !open) return undefined;
  const root = pitchClassOf(query.chord.root);
  const { capo, frets } = query.instrument;
  return STEPS_ASIDE.map((aside) => chosen.anchor + own + aside).find((f) => {
    const sounding = palette[(midiOf(open.pitch) + f - root + 12) % 12];
    return f >= capo && f <= frets && sounding?.kind === 'chord';
  });
}

/** The fret at which a string belongs to the shape. */
function shapeFret(context: StringContext, index: number): number | undefined {
  const grip = context.chosen?.grip;
  if (grip === undefined) return melodicFret(context, index);
  return grip.tones.find((tone) => tone.string === index + 1)?.fret;
}

function tonesOnString(context: StringContext, index: number): readonly Tone[] {
  const { query, palette, reach, chosen } = context;
  const open = query.instrument.strings[index];
  if (open === undefined) return [];
  const openMidi = midiOf(open.pitch);
  const root = pitchClassOf(query.chord.root);
  const grip = chosen?.grip?.tones.find((tone) => tone.string === index + 1);
  const shape = shapeFret(context, index);
  const tones: Tone[] = [];
  for (let f = query.instrument.capo; f <= query.instrument.frets; f++) {
    const sounding = palette[(openMidi + f - root + 12) % 12];
    if (sounding === undefined) continue;
    const held = grip?.fret === f ? grip : undefined;
    const how = reach[f] ?? 'out';
    tones.push({
      string: stringNumber(index + 1),
      fret: fret(f),
      pitch: pitchAt(sounding.name, midi(openMidi + f)),
      degree: sounding.degree,
      kind: f === shape ? 'shape' : sounding.kind,
      reach: how,
      ...fingerAt(held, f, how, query.position),
    });
  }
  return tones;
}

function askedFor(query: ReadingQuery): FormAtHand | undefined {
  const { chord, form, anchor } = query;
  if (form === undefined) return undefined;
  const copy = anchor === undefined ? undefined : copyAt(chord, query, form, anchor);
  return copy ?? nearestCopy(chord, query, form);
}

/**
 * Everything the hand can reach of a chord from one position: the forms under it, best first, the
 * one that is shown, and every chord tone and switched-on colour tone on the neck with its name,
 * degree, kind and reach. Where four fingers cannot hold the chord, the chord tones within a fret of
 * the form's own places stand for the shape. Nothing but the query decides it. Tones run string by
 * string from the thinnest, each from the nut up.
 */
export function readNeck(query: ReadingQuery): Reading {
  const forms = formsAtHand(query.chord, query);
  const asked = askedFor(query);
  const ranked = forms.find(
    (at) => at.form.name === asked?.form.name && at.anchor === asked.anchor,
  );
  const chosen = ranked ?? asked ?? forms[0];
  const reach = reachByFret(query.instrument, query.span, query.position);
  const context = { query, palette: paletteOf(query), reach, chosen };
  const tones = query.instrument.strings.flatMap((_, index) => tonesOnString(context, index));
  const { chord, position } = query;
  return { chord, position, forms, chosen, tones };
}
