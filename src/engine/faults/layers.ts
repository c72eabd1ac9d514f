import type { Config, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { allFailures, compatible, type Failure } from './failure.ts';
import type { Hazard } from './hazard.ts';
import { makeTestBed } from './test-bed.ts';

/** A set of failures that together let a hazard through, and no part of which does so alone. */
export interface FailureSet {
  readonly failures: readonly Failure[];
  /** A state in which the hazard is there. */
  readonly config: Config;
}

export interface Progress {
  /** Sets tried, of how many at this size. */
  readonly size: number;
  readonly tried: number;
  readonly total: number;
}

/** How many sets are tried between two reports of progress. */
const BATCH = 500;

/**
 * All smallest sets of at most `most` (1 to 3) failures at once that let a hazard through in this wiring: failures
 * strike in any resting state that the healthy system reaches, and valves may then move in any order. Yields
 * progress as it goes, so that whoever drives it can stop. The sets come smallest first.
 */
export function* findLayers(
  system: System,
  wires: readonly Wire[],
  hazard: Hazard,
  most: number,
): Generator<Progress, FailureSet[]> {
  const found: FailureSet[] = [];
  const failures = allFailures(system, wires);
  const beds = hazard.watches(system).map((watch) => makeTestBed(system, wires, hazard, watch));
  const strike = (set: readonly Failure[]): Config | undefined => {
    for (const bed of beds) {
      const config = bed(set);
      if (config) return config;
    }
    return undefined;
  };

  const none = strike([]);
  if (none) return [{ failures: [], config: none }];
  for (let size = 1; size <= most; size++) {
    let tried = 0;
    const total = choose(failures.length, size);
    for (const indices of combinations(failures.length, size)) {
      if (++tried % BATCH === 0) yield { size, tried, total };
      const set = indices.map((k) => failures[k]!);
      // It holds a smaller one that is enough by itself.
      if (found.some((smaller) => smaller.failures.every((failure) => set.includes(failure)))) continue;
      if (!set.every((a, k) => set.slice(k + 1).every((b) => compatible(a, b)))) continue;
      const config = strike(set);
      if (config) found.push({ failures: set, config });
    }
    yield { size, tried: total, total };
  }
  return found;
}

/** Runs the search to its end. */
export function layersOf(system: System, wires: readonly Wire[], hazard: Hazard, most: number): FailureSet[] {
  const search = findLayers(system, wires, hazard, most);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function* combinations(count: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let k = from; k <= count - size; k++) {
    for (const rest of combinations(count, size - 1, k + 1)) yield [k, ...rest];
  }
}

const choose = (count: number, size: number): number => {
  let ways = 1;
  for (let k = 0; k < size; k++) ways = (ways * (count - k)) / (k + 1);
  return ways;
};
