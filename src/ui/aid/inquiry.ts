import { alikeGroups } from '../../engine/diagnose/alike.ts';
import { standsAnyhow } from '../../engine/diagnose/anyhow.ts';
import { type Bench, makeBench } from '../../engine/diagnose/bench.ts';
import { type Candidate, swappedCandidates } from '../../engine/diagnose/candidate.ts';
import type { Memo } from '../../engine/diagnose/cluster.ts';
import { ask, type Test } from '../../engine/diagnose/evidence.ts';
import { arrive, type Setup } from '../../engine/diagnose/setup.ts';
import type { Stand, World } from '../../engine/diagnose/world.ts';
import { bitsOf, type Settings, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { mayBe } from './agrees.ts';
import { type History, type Moment, withoutFind } from './note.ts';

/** So many candidates are split into alike groups; more are counted one by one. */
const MOST_GROUPED = 60;

/** A finding that does not fit the others: without it so many candidates explain the rest. */
export interface Misfit {
  readonly moment: number;
  readonly test: Test;
  readonly back: number;
}

/** Everything that may be wrong, as far as the history of the wiring lets it: wires that once worked did not move by themselves. */
export function suspects(
  system: System,
  wires: readonly Wire[],
  all: readonly Candidate[],
  history: History,
): Candidate[] {
  if (history === 'worked') {
    return all.filter(({ misplaced, strays }) => misplaced.length === 0 && strays.length === 0);
  }
  const swapped = swappedCandidates(system, wires);
  return [...new Map([...all, ...swapped].map((one) => [one.id, one])).values()];
}

/**
 * What is still possible on a real visit. Nobody saw every move of it, so each moment is explained by itself: however
 * the valves got there, but all of its findings together. A candidate is out when one moment has no explanation.
 */
export class Inquiry {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly candidates: readonly Candidate[];
  readonly bench: Bench;
  /** Per settings: how each candidate may stand, worked out when first asked. */
  readonly #stands = new Map<number, Map<Candidate, World>>();

  constructor(system: System, wires: readonly Wire[], candidates: readonly Candidate[]) {
    this.system = system;
    this.wires = wires;
    this.candidates = candidates;
    this.bench = makeBench(system);
  }

  setup(settings: Settings): Setup {
    return arrive(this.system, this.wires, settings);
  }

  /** Every way in which a candidate may stand with these settings. */
  #standing(settings: Settings, candidate: Candidate): World {
    const bits = bitsOf(this.system, settings);
    const known = this.#stands.get(bits) ?? new Map<Candidate, World>();
    this.#stands.set(bits, known);
    const found = known.get(candidate) ?? standsAnyhow(this.bench, this.setup(settings), candidate);
    known.set(candidate, found);
    return found;
  }

  /** Of these candidates those that explain a moment, each in the ways to stand that do. */
  explaining({ settings, finds }: Moment, among: readonly Candidate[]): World[] {
    const setup = this.setup(settings);
    const memo: Memo = new Map();
    const checks = finds.map(({ test, outcome }) => {
      const shows = ask(setup, test, memo);
      return (stand: Stand) => mayBe(test, outcome, shows(stand));
    });
    return among.flatMap((candidate) => {
      const world = this.#standing(settings, candidate);
      const stands = world.stands.filter((stand) => checks.every((fits) => fits(stand)));
      return stands.length > 0 ? [{ candidate, stands }] : [];
    });
  }

  /** The candidates that explain every moment. */
  left(moments: readonly Moment[], among: readonly Candidate[] = this.candidates): readonly Candidate[] {
    return moments
      .filter(({ finds }) => finds.length > 0)
      .reduce((left, moment) => this.explaining(moment, left).map(({ candidate }) => candidate), among);
  }

  /** When nothing explains everything: the findings without any one of which something does, the most brought back first. */
  misfits(moments: readonly Moment[]): Misfit[] {
    return moments
      .flatMap((moment, k) => {
        const others = this.left(moments.filter((_, other) => other !== k));
        return moment.finds.map(({ test }) => {
          const back = this.left([withoutFind(moment, test)], others).length;
          return { moment: k, test, back };
        });
      })
      .filter(({ back }) => back > 0)
      .sort((a, b) => b.back - a.back);
  }

  /** Candidates in groups that nothing can tell apart; each alone when there are too many to find out. */
  groups(left: readonly Candidate[]): Candidate[][] {
    if (left.length > MOST_GROUPED) return left.map((one) => [one]);
    return alikeGroups(this.bench, this.wires, left);
  }
}
