/**
 * What is touched sounds: a tone on the neck, a chord in the lane, a form's bracket, a bend or a
 * connection in its list. One listener for the whole page, after whatever else the touch does.
 */

import { fret, type Place, stringNumber } from '#neck';
import { struckAt } from '#sound';
import { bendKey, connectionKey } from '../material/overlay-marks.ts';
import type { StudyStore } from '../store/index.ts';
import type { Player } from './player.ts';
import { struckBend, struckConnection } from './struck.ts';

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

function hearTone(
  store: StudyStore,
  { engine }: Player,
  drawing: Element,
  event: MouseEvent,
): void {
  const place = toneUnder(drawing, event);
  const { instrument, sound } = store.cell.get().workspace;
  if (place) engine.strike(struckAt([place], instrument, sound.transport.semitones));
}

/** The bend or connection whose row has a key. */
function hearRow(store: StudyStore, { engine }: Player, key: string): void {
  const { study, workspace } = store.cell.get();
  const { instrument, sound } = workspace;
  const { semitones } = sound.transport;
  const bend = study.bends.find((one) => bendKey(one) === key);
  const connection = study.connections.find((one) => connectionKey(one) === key);
  if (bend) engine.strike(struckBend(bend, instrument, semitones));
  else if (connection) engine.strike(struckConnection(connection, instrument, semitones));
}

type Touched = (element: HTMLElement, event: MouseEvent) => void;

function touchesOf(store: StudyStore, player: Player): readonly (readonly [string, Touched])[] {
  return [
    ['[data-row]', ({ dataset }) => hearRow(store, player, dataset['row'] ?? '')],
    ['[data-chord-cell], .bracket-button', () => player.hearChord()],
    ['.neck-drawing', (drawing, event) => hearTone(store, player, drawing, event)],
  ];
}

/** Hears the touches of a page; gives what ends that. While it plays, only the music is heard. */
export function hearTouches(page: Document, store: StudyStore, player: Player): () => void {
  const touches = touchesOf(store, player);
  const touched = (event: MouseEvent): void => {
    const { touch } = store.cell.get().workspace.sound;
    const playing = player.engine.state().phase === 'playing';
    if (!touch || playing || !(event.target instanceof Element)) return;
    const { target } = event;
    const found = touches.find(([selector]) => target.closest(selector) !== null);
    const element = found && target.closest<HTMLElement>(found[0]);
    if (element) found[1](element, event);
  };
  page.addEventListener('click', touched);
  return () => page.removeEventListener('click', touched);
}
