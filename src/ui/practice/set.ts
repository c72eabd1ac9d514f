import type { ObjectiveState } from '../../course/progress/course-state.ts';
import { methodOf, mixedSet, type Pick, revisionSet, separate } from '../../course/progress/mix.ts';
import type { Random } from '../../course/random.ts';
import { addressOf, type Objective } from '../../course/task.ts';

/** A question of a set: its address, and the objective it is evidence of. */
export interface Place {
  readonly objective: string;
  readonly item: string;
}

/** A set in hand: its questions, and for each one answered so far whether the first answer was right. */
export interface RunningSet {
  readonly places: readonly Place[];
  readonly results: readonly boolean[];
}

const placesOf = (
  picks: readonly Pick[],
  states: readonly ObjectiveState[],
  { int }: Random,
): readonly Place[] => {
  const levels = new Map(states.map(({ objective, mastery }) => [objective.id, mastery.level]));
  return picks.map(({ objective, task }) => ({
    objective: objective.id,
    item: addressOf(task, int(2 ** 32), levels.get(objective.id) ?? 1),
  }));
};

/** Deals a mixed set out of what has been met; before anything has, out of the whole course. */
export function dealMixed(states: readonly ObjectiveState[], most: number, random: Random): RunningSet {
  const met = states.filter(({ mastery }) => mastery.state !== 'unseen');
  const methods = new Set(met.flatMap(({ objective }) => objective.tasks.map(methodOf)));
  const among = methods.size > 1 ? met : states;
  return { places: placesOf(mixedSet(among, most, random), states, random), results: [] };
}

/** Deals a set of what is due. */
export const dealRevision = (
  states: readonly ObjectiveState[],
  most: number,
  random: Random,
): RunningSet => ({
  places: placesOf(revisionSet(states, most, random), states, random),
  results: [],
});

/** Deals a test of a part: one question for each objective, neighbours of one method kept apart where that can be. */
export function dealTest(objectives: readonly Objective[], random: Random): RunningSet {
  const picks = objectives
    .filter(({ tasks }) => tasks.length > 0)
    .map((objective) => ({ objective, task: random.pick(objective.tasks) }));
  const apart = separate(picks, ({ task }) => methodOf(task));
  const order = [...apart, ...picks.filter((pick) => !apart.includes(pick))];
  return {
    places: order.map(({ objective, task }) => ({
      objective: objective.id,
      item: addressOf(task, random.int(2 ** 32), 2),
    })),
    results: [],
  };
}

/** A set that was left off, as the device kept it; undefined for anything else. */
export function readSet(data: unknown): RunningSet | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { places, results } = data as Record<string, unknown>;
  const sound =
    Array.isArray(places) &&
    places.every((one) => typeof one?.objective === 'string' && typeof one?.item === 'string') &&
    Array.isArray(results) &&
    results.every((one) => typeof one === 'boolean') &&
    results.length <= places.length;
  return sound ? { places, results } : undefined;
}

/** What counts as passing a test: four of five (Kulik and others 1990 report mastery levels of 80 to 90 %). */
export const PASS = 0.8;
export const passes = ({ places, results }: RunningSet): boolean =>
  places.length > 0 && results.filter(Boolean).length / places.length >= PASS;
