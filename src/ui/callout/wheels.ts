import { objectiveOf } from '../../course/callouts/objectives.ts';
import { type Help, masteryOf } from '../../course/progress/mastery.ts';
import type { Callout } from '../../engine/diagnose/callout.ts';
import { familyOf } from '../../engine/diagnose/symptom.ts';
import type { KeptStore } from '../../store/store.ts';
import type { Wheel } from './desk.svelte.ts';

/** What each training wheel shows, as its name. */
export const wheelNames: Readonly<Record<Wheel, string>> = {
  count: 'How many are left',
  path: 'Where live gets to',
  next: 'The next test',
};

/** Training wheels that are on to begin with: all of them at first, the count alone later, then none. */
export const wheelsFor = (help: Help): readonly Wheel[] =>
  help === 'worked' ? ['count', 'path', 'next'] : help === 'partly' ? ['count'] : [];

/** How much help this device's learner still needs with callouts of the same family. */
export const helpOf = async (store: Pick<KeptStore, 'trialsOf'>, callout: Callout): Promise<Help> =>
  masteryOf(await store.trialsOf(objectiveOf(familyOf(callout)))).help;
