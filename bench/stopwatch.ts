/** How hard to measure: a smoke run only shows that everything runs. */
export interface Effort {
  readonly smoke: boolean;
}

/** Something to time. It returns a number that depends on all its work, so that none of it can be optimised away. */
export type Work = () => number;

/** Sum of all that the timed work returned. */
let consumed = 0;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const high = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? high : ((sorted[middle - 1] ?? Number.NaN) + high) / 2;
}

/** Nanoseconds of processor time since `start`: what other programs take of a shared machine is left out. */
export function processorTime(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) * 1000;
}

function run(work: Work, times: number): number {
  const start = process.cpuUsage();
  for (let k = 0; k < times; k++) consumed += work();
  return processorTime(start);
}

/**
 * Nanoseconds of processor time a call of each work: the median of several rounds, after a warm-up. The works take
 * turns in every round, so a busy spell of the machine falls on all of them and their ratios hold.
 * @param roundMs how long a work runs in one round, at least
 */
export function timeAll<Name extends string>(
  works: Readonly<Record<Name, Work>>,
  { smoke }: Effort,
  { rounds = 15, roundMs = 20 } = {},
): Record<Name, number> {
  const entries = Object.entries<Work>(works).map(([name, work]) => {
    // Finding the size of a round is the warm-up too.
    let times = 1;
    if (smoke) run(work, 1);
    else while (run(work, times) < roundMs * 1e6) times *= 2;
    return { name, work, times, taken: [] as number[] };
  });
  for (let round = 0; round < (smoke ? 1 : rounds); round++) {
    for (const { work, times, taken } of entries) taken.push(run(work, times) / times);
  }
  if (!Number.isFinite(consumed)) throw new Error('the timed work gave no number');
  return Object.fromEntries(entries.map(({ name, taken }) => [name, median(taken)])) as Record<Name, number>;
}
