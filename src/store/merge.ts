import type { Change } from './changes.ts';
import { trialKey } from './records.ts';
import { isWithin } from './sittings.ts';
import type { Choices, Progress } from './store.ts';

/** The choices of two devices: those of this one stay, but for the page where the learner was last. */
function mergedChoices(here: Choices, there: Choices): Choices {
  const last = (there.last?.at ?? 0) > (here.last?.at ?? 0) ? there.last : here.last;
  return { ...there, ...here, ...(last && { last }) };
}

/** What has to change here so that nothing of either is lost; an answer that both have is one answer. */
export function changesOf(here: Progress, there: Progress): readonly Change[] {
  const known = new Set(here.trials.map(trialKey));
  const fresh = there.trials.filter((trial) => {
    const key = trialKey(trial);
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
  const draftTimes = new Map(here.drafts.map(({ place, at }) => [place, at]));
  const begun = there.drafts.filter(({ place, at }) => at > (draftTimes.get(place) ?? -1));
  const visitTimes = new Map(here.visits.map(({ id, at }) => [id, at]));
  const visited = there.visits.filter(({ id, at }) => at > (visitTimes.get(id) ?? -1));
  const sat = new Map((here.sittings ?? []).map((sitting) => [sitting.id, sitting]));
  const sittings = (there.sittings ?? []).filter((sitting) => {
    const own = sat.get(sitting.id);
    return !own || !isWithin(sitting, own);
  });
  const choices = mergedChoices(here.choices, there.choices);
  const same = JSON.stringify(choices) === JSON.stringify({ ...here.choices });
  return [
    ...fresh.map((trial): Change => ({ kind: 'trial', trial })),
    ...begun.map((draft): Change => ({ kind: 'draft', draft })),
    ...visited.map((visit): Change => ({ kind: 'visit', visit })),
    ...sittings.map((sitting): Change => ({ kind: 'sitting', sitting })),
    ...(same ? [] : [{ kind: 'choose', choices } satisfies Change]),
  ];
}
