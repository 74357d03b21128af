/**
 * What is touched sounds: a tone on the neck, a chord in the lane, a form's bracket, a bend or a
 * connection in its list. Listeners for the whole page: tones before whatever else a click does, the
 * others after it.
 */

import { fret, type Place, stringNumber } from '#neck';
import { struckAt } from '#sound';
import { bendKey, connectionKey } from '../material/overlay-marks.ts';
import type { StudyStore } from '../store/index.ts';
import type { Player } from './player.ts';
import { groupsOfConnection, struckBend, struckConnection } from './struck.ts';

/** Pixels around a tone that still count as the tone: a finger is not a point (WCAG 2.2, 2.5.8). */
const FINGER = 12;

interface Tone {
  readonly place: Place;
  readonly away: number;
}

function toneOf(element: HTMLElement | SVGElement, x: number, y: number): Tone {
  const { left, top, width, height } = element.getBoundingClientRect();
  const away = Math.hypot(x - left - width / 2, y - top - height / 2);
  const { string = '', fret: at = '' } = element.dataset;
  return { place: { string: stringNumber(Number(string)), fret: fret(Number(at)) }, away };
}

/** The tone under a point of the drawing, the nearest of those within a finger's breadth. */
function toneUnder(drawing: Element, { clientX, clientY }: MouseEvent): Place | undefined {
  const tones = [...drawing.querySelectorAll<SVGElement>('[data-tone]')];
  return tones
    .map((tone) => toneOf(tone, clientX, clientY))
    .filter(({ away }) => away <= FINGER)
    .sort((a, b) => a.away - b.away)[0]?.place;
}

function hearTone(store: StudyStore, player: Player, place: Place): void {
  const { instrument, sound } = store.cell.get().workspace;
  const notes = struckAt([place], instrument, sound.transport.semitones);
  player.strike(notes, [{ places: [place], after: 0 }]);
}

/** The bend or connection whose row has a key. */
function hearRow(store: StudyStore, player: Player, key: string): void {
  const { study, workspace } = store.cell.get();
  const { instrument, sound } = workspace;
  const { semitones } = sound.transport;
  const bend = study.bends.find((one) => bendKey(one) === key);
  const connection = study.connections.find((one) => connectionKey(one) === key);
  if (bend) player.strike(struckBend(bend, instrument, semitones), [{ places: [bend], after: 0 }]);
  else if (connection)
    player.strike(
      struckConnection(connection, instrument, semitones),
      groupsOfConnection(connection),
    );
}

type Touched = (element: HTMLElement) => void;

function touchesOf(store: StudyStore, player: Player): readonly (readonly [string, Touched])[] {
  return [
    ['[data-row]', ({ dataset }) => hearRow(store, player, dataset['row'] ?? '')],
    ['[data-chord-cell], .bracket-button', () => player.hearChord()],
  ];
}

/**
 * A click on a tone is for the ear, also while music plays: prevented, it leaves the hand where it is.
 * Beside the tones it is for the hand.
 */
function touchedTone(store: StudyStore, player: Player, event: MouseEvent): void {
  const { target } = event;
  if (!store.cell.get().workspace.sound.touch || !(target instanceof Element)) return;
  const drawing = target.closest('button') === null && target.closest('.neck-drawing');
  const place = drawing ? toneUnder(drawing, event) : undefined;
  if (place === undefined) return;
  event.preventDefault();
  hearTone(store, player, place);
}

/** Hears the touches of a page; gives what ends that. While it plays, chords are not struck: the music goes there. */
export function hearTouches(page: Document, store: StudyStore, player: Player): () => void {
  const touches = touchesOf(store, player);
  const touched = (event: MouseEvent): void => {
    const { touch } = store.cell.get().workspace.sound;
    const playing = player.engine.state().phase === 'playing';
    if (!touch || playing || !(event.target instanceof Element)) return;
    const { target } = event;
    const found = touches.find(([selector]) => target.closest(selector) !== null);
    const element = found && target.closest<HTMLElement>(found[0]);
    if (element) found[1](element);
  };
  const tone = (event: MouseEvent): void => touchedTone(store, player, event);
  page.addEventListener('click', tone, { capture: true });
  page.addEventListener('click', touched);
  return () => {
    page.removeEventListener('click', tone, { capture: true });
    page.removeEventListener('click', touched);
  };
}
