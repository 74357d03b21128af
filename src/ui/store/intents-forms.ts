/** Intents that ask for a form of the chord, and for where else on the neck it can be played. */
import type { Workspace } from '#lesson';
import { bestAtHand, type FormAtHand, nearestCopy, positionOf } from '#neck';
import { within } from './intents-hand.ts';
import { pinForm, unpin } from './intents-route.ts';
import { patched, step, without } from './state.ts';
import type { AppState } from './types.ts';

const withForm = (workspace: Workspace, form: string | undefined): Workspace =>
  form === undefined ? without(workspace, 'form') : patched(workspace, { form });

const indexFret = ({ grip, anchor }: FormAtHand, { instrument }: Workspace): number =>
  grip ? positionOf(grip, instrument.capo) : anchor;

/** On a route that chooses the forms, asking for one is pinning it to the chord under the cursor. */
export const pinsForms = ({ workspace }: Pick<AppState, 'workspace'>): boolean =>
  workspace.route === 'stay' || workspace.route === 'travel';

/** Pins a form to the chord under the cursor. */
const pinAt = (state: AppState, { form, anchor }: FormAtHand, run?: string): AppState =>
  pinForm(state, state.study.cursor, form.name, anchor, run);

/** Whether a place is the one that is taken at a position without asking for its form. */
function isBestAt({ study, workspace }: AppState, place: FormAtHand, position: number): boolean {
  const { instrument, span, route } = workspace;
  const best = study.chord && bestAtHand(study.chord, { position, instrument, span });
  return route === undefined && samePlaceAs(place, best);
}

/** A form is asked for by name where another would be taken without, or where one `keeps` to it. */
function moveToPlace(state: AppState, place: FormAtHand, keeps = false, run?: string): AppState {
  const { workspace } = state;
  if (pinsForms(state)) return pinAt(state, place, run);
  const position = within(workspace, indexFret(place, workspace));
  const free = !keeps && isBestAt(state, place, position);
  const moved = patched(workspace, { position });
  return step(state, withForm(moved, free ? undefined : place.form.name), run);
}

const samePlaceAs = (place: FormAtHand, other: FormAtHand | undefined): boolean =>
  place.form.name === other?.form.name && place.anchor === other.anchor;

/** The form that was chosen by hand: one that the walk along the neck asked for is none. */
const formByHand = ({ workspace, walked }: AppState): string | undefined =>
  pinsForms({ workspace }) || workspace.form === walked ? undefined : workspace.form;

/**
 * How far a place lies above another, or above the fret where the hand is: above 0 where it lies above.
 * Places that begin at one fret follow each other by their anchors.
 */
function aboveBy(workspace: Workspace, place: FormAtHand, from: FormAtHand | number): number {
  const fret = (one: FormAtHand): number => within(workspace, indexFret(one, workspace));
  if (typeof from === 'number') return fret(place) - from;
  return fret(place) - fret(from) || place.anchor - from.anchor;
}

/**
 * Where one goes on from: the place that is held. The hand itself where that holds nothing of it, or
 * of the one form that it is to go along with no more than half.
 */
function goingFrom(state: AppState): FormAtHand | number {
  const { reading, position } = state.study;
  const chosen = reading?.chosen;
  if (!chosen?.grip) return position;
  const less = formByHand(state) === undefined ? 0 : chosen.of / 2;
  return chosen.under > less ? chosen : position;
}

/** The places of the chord that can be held: of the form chosen by hand, else of any. */
function placesHeld(state: AppState): readonly FormAtHand[] {
  const form = formByHand(state);
  return state.study.places.filter(
    (place) => place.grip && (form === undefined || place.form.name === form),
  );
}

/** Those beyond where one goes on from; where there is none, what the hand is still on its way to. */
function placesBeyond(state: AppState, by: 1 | -1): readonly FormAtHand[] {
  const { workspace, study } = state;
  const beyond = (from: FormAtHand | number) =>
    placesHeld(state).filter((place) => aboveBy(workspace, place, from) * by > 0);
  const further = beyond(goingFrom(state));
  return further.length > 0 || formByHand(state) === undefined ? further : beyond(study.position);
}

interface Elsewhere {
  readonly form: string | undefined;
  readonly up: boolean;
  readonly down: boolean;
}

const looked = new WeakMap<AppState['study'], Elsewhere>();

function lookElsewhere(state: AppState, form: string | undefined): Elsewhere {
  const [up, down] = ([1, -1] as const).map((by) => placesBeyond(state, by).length > 0);
  const found = { form, up: up === true, down: down === true };
  looked.set(state.study, found);
  return found;
}

/**
 * Whether the chord can be held further up (1) or down (-1) the neck. Buttons ask at every move of the
 * cursor, so that a study is looked at once.
 */
export function isElsewhere(state: AppState, by: 1 | -1): boolean {
  const form = formByHand(state);
  const known = looked.get(state.study);
  const { up, down } = known?.form === form && known ? known : lookElsewhere(state, form);
  return by > 0 ? up : down;
}

/**
 * Moves the hand to the next (1) or previous (-1) place of this chord along the neck: of the form
 * that was chosen by hand, else of any.
 */
export function shapeElsewhere(state: AppState, by: 1 | -1): AppState {
  const { workspace } = state;
  const form = formByHand(state);
  const [place] = placesBeyond(state, by).toSorted((a, b) => aboveBy(workspace, a, b) * by);
  if (!place) return state;
  const moved = moveToPlace(state, place, form !== undefined, 'elsewhere');
  const walked = moved.workspace.form;
  return form === undefined && walked !== undefined ? patched(moved, { walked }) : moved;
}

/** Pins the copy of a form nearest to the hand, or lets go of the one that is pinned. */
function pickPinned(state: AppState, form: string | undefined): AppState {
  const { workspace, study } = state;
  if (form === undefined || !study.chord) {
    return unpin(state, study.cursor);
  }
  const { instrument, span } = workspace;
  const copy = nearestCopy(study.chord, { position: study.position, instrument, span }, form);
  return copy ? pinAt(state, copy) : state;
}

/**
 * Asks for a form by name, in its copy nearest to the hand, which stays; `undefined` goes back to
 * whatever lies best under it. With an `anchor` the hand moves to that copy. On a route that stays
 * or travels the form is pinned to the chord instead.
 */
export function pickForm(state: AppState, form: string | undefined, anchor?: number): AppState {
  const place = state.study.places.find((p) => p.form.name === form && p.anchor === anchor);
  const chosen = without(state, 'walked');
  if (place) return moveToPlace(chosen, place);
  if (pinsForms(state)) return pickPinned(chosen, form);
  return step(chosen, withForm(state.workspace, form));
}
