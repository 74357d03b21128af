/** Everything a person can do, as one flat list of functions over the store. */
import * as cursor from './intents-cursor.ts';
import * as field from './intents-fields.ts';
import * as fingering from './intents-fingering.ts';
import * as hand from './intents-hand.ts';
import * as lens from './intents-lens.ts';
import * as route from './intents-route.ts';
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

type Bind = ReturnType<typeof binder>;

/** Progression, cursor, hand, view and instrument. */
function studying(bind: Bind) {
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
  };
}

/** Routes, lenses and fingerings. */
function material(bind: Bind) {
  return {
    setRoute: bind(route.setRoute),
    setRouteTo: bind(route.setRouteTo),
    chooseRoute: bind(route.chooseRoute),
    stopPlanning: bind(route.stopPlanning),
    pinForm: bind(route.pinForm),
    unpin: bind(route.unpin),
    setWeight: bind(route.setWeight),
    resetWeights: bind(route.resetWeights),
    setBendLimit: bind(route.setBendLimit),
    setBendModel: bind(route.setBendModel),
    resetBendLimits: bind(route.resetBendLimits),
    setLens: bind(lens.setLens),
    turnForm: bind(lens.turnForm),
    compareWithForm: bind(lens.compareWithForm),
    compareWithChord: bind(lens.compareWithChord),
    stopComparing: bind(lens.stopComparing),
    leave: bind(lens.leave),
    setFingering: bind(fingering.setFingering),
    putFinger: bind(fingering.putFinger),
    liftFinger: bind(fingering.liftFinger),
    chooseName: bind(fingering.chooseName),
    saveOwnForm: bind(fingering.saveOwnForm),
    renameOwnForm: bind(fingering.renameOwnForm),
    deleteOwnForm: bind(fingering.deleteOwnForm),
  };
}

/** Binds every intent to a store. Each returns nothing; what it did is in the state. */
export function intentsOn(cell: Cell<AppState>, page: Page) {
  const bind = binder(cell);
  return {
    ...studying(bind),
    ...material(bind),
    copyLink: (): Promise<void> => copyLink(cell, page),
  };
}

export type Intents = ReturnType<typeof intentsOn>;
