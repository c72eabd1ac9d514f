import { perform } from './act.ts';
import type { Bench } from './bench.ts';
import type { Callout } from './callout.ts';
import type { Candidate } from './candidate.ts';
import { consistent } from './evidence.ts';
import { type Entry, observed } from './replay.ts';
import { arrive, type Setup } from './setup.ts';
import { sharing } from './symptom.ts';
import { follow, refuse, sameCircuit, type World } from './world.ts';

/** What is still possible on a visit, after all that was done and seen so far. */
export interface Search {
  readonly setup: Setup;
  /** Every candidate that explains all of it, each in every way that it may stand now. */
  readonly worlds: readonly World[];
}

/** So many candidates are worked through between two reports of how far it has come. */
const CHUNK = 32;

/** Works a list through in chunks; yields the share that is done, from 0 to 1. */
function* inChunks<From, To>(all: readonly From[], work: (some: readonly From[]) => readonly To[]) {
  const found: To[] = [];
  for (let k = 0; k < all.length; k += CHUNK) {
    found.push(...work(all.slice(k, k + CHUNK)));
    yield Math.min(1, (k + CHUNK) / all.length);
  }
  return found;
}

/** Runs steps to their end. */
function last<Result>(steps: Generator<number, Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/**
 * The search at the door: the candidates that explain every complaint. In steps, for a worker that also has to listen:
 * each yields the share of the candidates that is done.
 */
export function* startSteps(
  bench: Bench,
  callout: Pick<Callout, 'system' | 'wires' | 'complaints' | 'found'>,
  candidates: readonly Candidate[],
): Generator<number, Search> {
  const worlds = yield* inChunks(candidates, (some) => sharing(bench, some, callout));
  return { setup: arrive(callout.system, callout.wires, callout.found), worlds };
}

/**
 * The search after one more entry of the visit. What a test showed rules candidates out; what was done is followed only
 * by those that are left, and only where it changes the circuit. In steps: see `startSteps`.
 */
export function* searchSteps(
  bench: Bench,
  { setup, worlds }: Search,
  { act, outcome }: Pick<Entry, 'act' | 'outcome'>,
): Generator<number, Search> {
  const { next, newFuse } = perform(setup, act);
  const test = observed(setup, act);
  if (test && outcome !== undefined) {
    return { setup: next, worlds: consistent(setup, worlds, { test, outcome }) };
  }
  if (sameCircuit(setup, next)) return { setup: next, worlds };
  const move = newFuse ? refuse : follow;
  const moved = yield* inChunks(worlds, (some) => some.map((world) => move(bench, next, world)));
  return { setup: next, worlds: moved };
}

/** The search at the door, all at once: see `startSteps`. */
export const startSearch = (...start: Parameters<typeof startSteps>): Search => last(startSteps(...start));

/** The search after one more entry, all at once: see `searchSteps`. */
export const searchOn = (...entry: Parameters<typeof searchSteps>): Search => last(searchSteps(...entry));
