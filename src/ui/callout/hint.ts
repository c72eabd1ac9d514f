import { energised, provedDead } from '../../engine/diagnose/setup.ts';
import type { VisitDesk } from './desk.svelte.ts';

/** The parts of a visit, in their order: ids are the anchors of the page. */
export const STAGES = [
  { id: 'customer', says: 'Listen' },
  { id: 'try', says: 'Try and look' },
  { id: 'isolate', says: 'Isolate' },
  { id: 'measure', says: 'Measure' },
  { id: 'say', says: 'Say what is wrong' },
] as const;
export type Stage = (typeof STAGES)[number]['id'];

/** What to do next, and where on the page. */
export interface Hint {
  readonly stage: Stage;
  readonly says: string;
}

/** The next sensible step of the visit. It knows what was done, and nothing of the fault. */
export function hintFor({
  setup,
  entries,
  enclosures,
}: Pick<VisitDesk, 'setup' | 'entries' | 'enclosures'>): Hint {
  const looked = entries.some(({ act }) => act.do === 'test' && act.test.kind !== 'reads');
  const read = entries.filter(({ act }) => act.do === 'test' && act.test.kind === 'reads').length;
  const begun = entries.some(({ act }) => act.do === 'identify' || act.do === 'isolate');
  const open = enclosures.some(({ id }) => setup.open.has(id));
  if (!looked)
    return {
      stage: 'try',
      says: 'Set the controls as the customer says, then look, listen and feel what happens.',
    };
  if (energised(setup)) {
    if (open)
      return {
        stage: 'measure',
        says: 'Live with a cover off: the tester only, and one hand in your pocket.',
      };
    return begun
      ? { stage: 'try', says: 'The supply is on. Try and look again, or isolate before you open anything.' }
      : {
          stage: 'isolate',
          says: 'Try other settings, as long as they tell you more. Then isolate, step by step, and measure.',
        };
  }
  if (!provedDead(setup))
    return { stage: 'isolate', says: 'Go on with the isolation until every step has its tick.' };
  if (!open) return { stage: 'measure', says: 'Proved dead. Take off a cover and measure.' };
  if (read < 2)
    return { stage: 'measure', says: 'Choose continuity or ohms, and put both probes on terminals.' };
  return {
    stage: 'say',
    says: 'Measure on while it tells you more. Say what is wrong when only one thing is left.',
  };
}
