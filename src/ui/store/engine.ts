/** The study lenses' computing and intents in one piece, to be fetched together and put in. */
import { besideInWords } from '../words-beside.ts';
import { materialInWords } from '../words-material.ts';
import { startBackground } from './background.ts';
import * as link from './copy-link.ts';
import { fingeredOf, naming } from './fingered.ts';
import * as example from './intents-example.ts';
import * as field from './intents-fields.ts';
import * as fingering from './intents-fingering.ts';
import * as form from './intents-forms.ts';
import { installIntents } from './intents-later.ts';
import * as lens from './intents-lens.ts';
import * as route from './intents-route.ts';
import * as sound from './intents-sound.ts';
import * as transpose from './intents-transpose.ts';
import { installLenses, type LensEngine } from './lenses.ts';
import { coloursOf, comparedOf, goingOn, shownOf } from './material.ts';
import { readyStudy } from './ready.ts';
import { routeOf, travelled } from './route.ts';
import * as undone from './undone.ts';

const ENGINE: LensEngine = {
  readyStudy,
  startBackground,
  shownOf,
  comparedOf,
  goingOn,
  coloursOf,
  routeOf,
  travelled,
  fingeredOf,
  naming,
  materialInWords,
  besideInWords,
};

/** Puts computing and intents in; the studies of every store are then made anew. */
export function installEngine(): void {
  installIntents({ example, field, form, fingering, lens, link, route, sound, transpose, undone });
  installLenses(ENGINE);
}
