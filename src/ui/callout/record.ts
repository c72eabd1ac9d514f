import { readCallout } from '../../course/callouts/address.ts';
import { calloutTrial } from '../../course/callouts/trial.ts';
import type { Trial } from '../../course/trial.ts';
import type { Verdict } from '../../engine/diagnose/judge.ts';
import { familyOf } from '../../engine/diagnose/symptom.ts';
import type { KeptStore } from '../../store/store.ts';
import type { VisitDesk } from './desk.svelte.ts';
import { helpOf, wheelsFor } from './wheels.ts';

/**
 * Adds a finished visit to the learner's log. The wheels that were on because the learner still needs them count as
 * steps that were shown; those that the learner turned on besides count as hints. Gives the trial, or undefined for a
 * callout without an address.
 */
export async function recordVisit(
  store: Pick<KeptStore, 'add' | 'trials' | 'trialsOf' | 'now'>,
  desk: Pick<VisitDesk, 'callout' | 'story' | 'wheelsUsed' | 'took'>,
  verdict: Verdict,
): Promise<Trial | undefined> {
  const callout = readCallout(desk.story.address);
  if (!callout) return undefined;
  const given = wheelsFor(await helpOf(store, desk.callout));
  const used = [...desk.wheelsUsed];
  const trial = calloutTrial({
    callout,
    family: familyOf(desk.callout),
    verdict,
    wheels: used.filter((wheel) => !given.includes(wheel)).length,
    attempt: 1 + (await store.trials()).filter(({ item }) => item === desk.story.address).length,
    at: store.now(),
    took: desk.took,
  });
  const shown = used.filter((wheel) => given.includes(wheel)).length;
  await store.add({ ...trial, shown });
  return { ...trial, shown };
}
