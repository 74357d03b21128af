/** Everything a person can do, as one flat list of functions over the store. */
import * as cursor from './intents-cursor.ts';
import * as hand from './intents-hand.ts';
import { type LaterIntents, laterIntents } from './intents-later.ts';
import * as text from './intents-text.ts';
import * as view from './intents-view.ts';
import { whenLenses } from './lenses.ts';
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

const binderLater =
  (cell: Cell<AppState>) =>
  <Given extends readonly unknown[]>(pick: (later: LaterIntents) => Change<Given>) =>
  (...given: Given): void =>
    whenLenses(() => {
      const later = laterIntents();
      if (later) cell.update((state) => pick(later)(state, ...given));
    }, true);

type Bind = ReturnType<typeof binder>;
type BindLater = ReturnType<typeof binderLater>;

/** Says what was taken back or done again, as soon as the words for it are there. */
const told = (before: AppState, after: AppState, again: boolean): AppState =>
  laterIntents()?.undone.telling(before, after, again) ?? after;

/** Progression, cursor, hand and view. */
function studying(bind: Bind) {
  return {
    setProgression: bind(text.setProgression),
    setKey: bind(text.setKey),
    setKeyText: bind(text.setKeyText),
    moveCursor: bind(cursor.moveCursor),
    moveCursorTo: bind(cursor.moveCursorTo),
    moveCursorToOffset: bind(cursor.moveCursorToOffset),
    setPosition: bind(hand.setPosition),
    stepPosition: bind(hand.stepPosition),
    toggleColour: bind(view.toggleColour),
    setLabels: bind(view.setLabels),
    setSpacing: bind(view.setSpacing),
    setTheme: bind(view.setTheme),
    setSpelling: bind(view.setSpelling),
    setShortcuts: bind(view.setShortcuts),
    openPanel: bind(view.openPanel),
    undo: bind((state) => told(state, undo(state), false)),
    redo: bind((state) => told(state, redo(state), true)),
    dismissNotice: bind(dismissNotice),
  };
}

/** Routes, lenses, fingerings, instrument and key; what is asked before they are fetched is done when they are. */
function material(later: BindLater) {
  return {
    loadExample: later(({ example }) => example.loadExample),
    shapeElsewhere: later(({ form }) => form.shapeElsewhere),
    pickForm: later(({ form }) => form.pickForm),
    setRoute: later(({ route }) => route.setRoute),
    setRouteTo: later(({ route }) => route.setRouteTo),
    chooseRoute: later(({ route }) => route.chooseRoute),
    stopPlanning: later(({ route }) => route.stopPlanning),
    pinForm: later(({ route }) => route.pinForm),
    unpin: later(({ route }) => route.unpin),
    setWeight: later(({ route }) => route.setWeight),
    resetWeights: later(({ route }) => route.resetWeights),
    setBendLimit: later(({ route }) => route.setBendLimit),
    setBendModel: later(({ route }) => route.setBendModel),
    resetBendLimits: later(({ route }) => route.resetBendLimits),
    setLens: later(({ lens }) => lens.setLens),
    turnForm: later(({ lens }) => lens.turnForm),
    compareWithForm: later(({ lens }) => lens.compareWithForm),
    compareWithChord: later(({ lens }) => lens.compareWithChord),
    stopComparing: later(({ lens }) => lens.stopComparing),
    leave: later(({ lens }) => lens.leave),
    setFingering: later(({ fingering }) => fingering.setFingering),
    putFinger: later(({ fingering }) => fingering.putFinger),
    liftFinger: later(({ fingering }) => fingering.liftFinger),
    chooseName: later(({ fingering }) => fingering.chooseName),
    saveOwnForm: later(({ fingering }) => fingering.saveOwnForm),
    renameOwnForm: later(({ fingering }) => fingering.renameOwnForm),
    deleteOwnForm: later(({ fingering }) => fingering.deleteOwnForm),
    transposeBy: later(({ transpose }) => transpose.transposeBy),
    transposeTo: later(({ transpose }) => transpose.transposeTo),
    setTuning: later(({ field }) => field.setTuning),
    setFrets: later(({ field }) => field.setFrets),
    setCapo: later(({ field }) => field.setCapo),
    setScale: later(({ field }) => field.setScale),
    setGauges: later(({ field }) => field.setGauges),
    setLeftHanded: later(({ field }) => field.setLeftHanded),
    setSpan: later(({ field }) => field.setSpan),
    resetInstrument: later(({ field }) => field.resetInstrument),
  };
}

/** What is heard. */
function sounding(later: BindLater) {
  return {
    setTempo: later(({ sound }) => sound.setTempo),
    setTempoHeard: later(({ sound }) => sound.setTempoHeard),
    setOnce: later(({ sound }) => sound.setOnce),
    setShare: later(({ sound }) => sound.setShare),
    setLoop: later(({ sound }) => sound.setLoop),
    loopSection: later(({ sound }) => sound.loopSection),
    setRise: later(({ sound }) => sound.setRise),
    setSemitones: later(({ sound }) => sound.setSemitones),
    setCountIn: later(({ sound }) => sound.setCountIn),
    setStudy: later(({ sound }) => sound.setStudy),
    setFeel: later(({ sound }) => sound.setFeel),
    setTouch: later(({ sound }) => sound.setTouch),
    setPedal: later(({ sound }) => sound.setPedal),
    setPart: later(({ sound }) => sound.setPart),
    setMaster: later(({ sound }) => sound.setMaster),
    setGuitar: later(({ sound }) => sound.setGuitar),
    resetSound: later(({ sound }) => sound.resetSound),
    setCautioned: later(({ sound }) => sound.setCautioned),
    setPractising: later(({ sound }) => sound.setPractising),
    setPlaying: later(({ sound }) => sound.setPlaying),
    follow: later(({ sound }) => sound.follow),
    unfollow: later(({ sound }) => sound.unfollow),
  };
}

/** Binds every intent to a store. Each returns nothing; what it did is in the state. */
export function intentsOn(cell: Cell<AppState>, page: Page) {
  const later = binderLater(cell);
  return {
    ...studying(binder(cell)),
    ...material(later),
    ...sounding(later),
    copyLink: () => whenLenses(() => laterIntents()?.link.copyLink(cell, page), true),
  };
}

export type Intents = ReturnType<typeof intentsOn>;
