/** Intents that are not for the first view: fetched with the study lenses. */

import type * as link from './copy-link.ts';
import type * as example from './intents-example.ts';
import type * as field from './intents-fields.ts';
import type * as fingering from './intents-fingering.ts';
import type * as form from './intents-forms.ts';
import type * as lens from './intents-lens.ts';
import type * as route from './intents-route.ts';
import type * as sound from './intents-sound.ts';
import type * as transpose from './intents-transpose.ts';
import type * as undone from './undone.ts';

export interface LaterIntents {
  readonly example: typeof example;
  readonly form: typeof form;
  readonly field: typeof field;
  readonly fingering: typeof fingering;
  readonly lens: typeof lens;
  readonly link: typeof link;
  readonly route: typeof route;
  readonly sound: typeof sound;
  readonly transpose: typeof transpose;
  readonly undone: typeof undone;
}

let intents: LaterIntents | undefined;

export const laterIntents = (): LaterIntents | undefined => intents;

export function installIntents(arrived: LaterIntents): void {
  intents = arrived;
}
