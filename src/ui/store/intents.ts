/** Everything a person can do, as one flat list of functions over the store. */
import * as cursor from './intents-cursor.ts';
import * as field from './intents-fields.ts';
import * as hand from './intents-hand.ts';
import * as text from './intents-text.ts';
import * as view from './intents-view.ts';
import { copyLink } from './keeping.ts';
import type { Page } from './page.ts';
import { dismissNotice, redo, undo } from './state.ts';
import type { AppState } from './types.ts';
import type { Cell } from './zustand.ts';

type Change<Given extends readonly unknown[]> = (state: AppState, ...given: Given) => AppState;

const binder =
  (cell: Cell<AppState>) =>
  <Given extends readonly unknown[]>(change: Change<Given>) =>
  (...given: Given): void =>
    cell.update((state) => change(state, ...given));

/** Binds every intent to a store. Each returns nothing; what it did is in the state. */
export function intentsOn(cell: Cell<AppState>, page: Page) {
  const bind = binder(cell);
  return {
    setProgression: bind(text.setProgression),
    loadExample: bind(text.loadExample),
    transposeBy: bind(text.transposeBy),
    transposeTo: bind(text.transposeTo),
    setKey: bind(text.setKey),
    setKeyText: bind(text.setKeyText),
    moveCursor: bind(cursor.moveCursor),
    moveCursorTo: bind(cursor.moveCursorTo),
    moveCursorToOffset: bind(cursor.moveCursorToOffset),
    setPosition: bind(hand.setPosition),
    stepPosition: bind(hand.stepPosition),
    shapeElsewhere: bind(hand.shapeElsewhere),
    pickForm: bind(hand.pickForm),
    toggleColour: bind(view.toggleColour),
    setLabels: bind(view.setLabels),
    setSpacing: bind(view.setSpacing),
    setTheme: bind(view.setTheme),
    setSpelling: bind(view.setSpelling),
    setShortcuts: bind(view.setShortcuts),
    openPanel: bind(view.openPanel),
    setTuning: bind(field.setTuning),
    setFrets: bind(field.setFrets),
    setCapo: bind(field.setCapo),
    setScale: bind(field.setScale),
    setGauges: bind(field.setGauges),
    setLeftHanded: bind(field.setLeftHanded),
    setSpan: bind(field.setSpan),
    resetInstrument: bind(field.resetInstrument),
    undo: bind(undo),
    redo: bind(redo),
    dismissNotice: bind(dismissNotice),
    copyLink: (): Promise<void> => copyLink(cell, page),
  };
}

export type Intents = ReturnType<typeof intentsOn>;
