/** What of a list is drawn on the neck, and which of its rows is pointed at. No part of the work. */
import { createCell } from '../store/zustand.ts';

interface Emphasis {
  /** Under the pointer or the focus. */
  readonly pointed?: string | undefined;
  /** Tapped: it stays until it is tapped again. */
  readonly held?: string | undefined;
}

const emphasis = createCell<Emphasis>({});

export const point = (key: string | undefined): void =>
  emphasis.update((now) => (now.pointed === key ? now : { ...now, pointed: key }));

export const hold = (key: string): void =>
  emphasis.update((now) => ({ ...now, held: now.held === key ? undefined : key }));

/** The key of the row that is emphasised, if any. */
export const useEmphasised = (): string | undefined =>
  emphasis.useSelected(({ pointed, held }) => pointed ?? held);

export const useHeld = (key: string): boolean => emphasis.useSelected(({ held }) => held === key);

/** Of which chord the bends that are drawn reach a tone. */
export const DRAWN = ['now', 'next', 'both'] as const;
export type Drawn = (typeof DRAWN)[number];

const drawn = createCell<Drawn>('now');

export const draw = (which: Drawn): void => drawn.update(() => which);
export const useDrawn = (): Drawn => drawn.useSelected((which) => which);
