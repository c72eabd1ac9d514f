import type { Family } from '../../engine/diagnose/symptom.ts';
import type { Objective } from '../task.ts';

/** What a learner can do who finds the faults of a family, to follow “You can”. */
const SAYS: Readonly<Record<Family, string>> = {
  'nothing-works': 'find out why nothing works at all',
  'no-heat-at-all': 'find out why it runs and nothing gets warm',
  'no-hot-water': 'find out why there is no hot water',
  'no-heating': 'find out why the heating stays cold',
  'one-zone-cold': 'find out why one zone stays cold',
  'heat-not-asked-for': 'find out why something gets hot that nobody asked for',
  'noise-or-waste': 'find out why something runs when it should rest',
};

const PREFIX = 'callout-';
// Not the engine's own list: whoever looks at progress need not fetch the engine.
const FAMILIES = Object.keys(SAYS) as Family[];

/** Id of the objective that visits of a family are evidence of: logs and mark books keep it. */
export const objectiveOf = (family: Family): string => `${PREFIX}${family}`;

/** The family of such an objective; undefined for another. */
export const familyOfObjective = (objective: string): Family | undefined =>
  FAMILIES.find((family) => objectiveOf(family) === objective);

/** An objective for each family of complaints. They have no tasks: what is asked is a visit. */
export const calloutObjectives: readonly Objective[] = FAMILIES.map((family) => ({
  id: objectiveOf(family),
  says: SAYS[family],
  tasks: [],
}));
