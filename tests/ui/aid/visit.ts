import { allCandidates } from '../../../src/engine/diagnose/callout.ts';
import type { Candidate } from '../../../src/engine/diagnose/candidate.ts';
import { outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import type { Allowed } from '../../../src/engine/diagnose/expert.ts';
import { begin, go, standOf } from '../../../src/engine/diagnose/replay.ts';
import { Inquiry, suspects } from '../../../src/ui/aid/inquiry.ts';
import { chooseNext, momentAt, type NextTest } from '../../../src/ui/aid/next.ts';
import { type History, type Moment, withFind } from '../../../src/ui/aid/note.ts';
import { symptomsOf } from '../../../src/ui/aid/symptoms.ts';
import { librarySystems } from '../../engine/support/library.ts';
import { must } from '../../engine/support/must.ts';

/** The aid on a system of the library, with its first right wiring. */
export function aidOn(id: string, history: History = 'worked') {
  const { system, references } = must(
    librarySystems.find((one) => one.id === id),
    id,
  );
  const wires = must(references[0]).wires;
  return new Inquiry(system, wires, suspects(system, wires, allCandidates(system, wires), history));
}

/** A number from 0 on that depends on a seed and a turn, the same every time. */
export const spread = (seed: number, turn: number, below: number): number =>
  Math.floor((((Math.sin(seed * 12.9898 + turn * 78.233) * 43758.5453) % 1) + 1) * below) % below;

export interface Walk {
  readonly nexts: readonly NextTest[];
  readonly moments: readonly Moment[];
  readonly left: readonly Candidate[];
  /** Whether the true fault was among what was left after every answer. */
  readonly kept: boolean;
}

/**
 * A real visit with the aid: a house with a fault whose valves have a past, and somebody who does what the aid says until
 * it says no more. The answers come from playing the faulty system; the aid does not know its past.
 */
export function walk(inquiry: Inquiry, fault: Candidate, who: Allowed, seed: number, most = 40): Walk {
  const { system, wires, bench } = inquiry;
  const symptoms = symptomsOf(system);
  const { settings } = must(symptoms[spread(seed, 0, symptoms.length)]);
  const callout = { system, wires, fault, complaints: [], found: {}, seed };
  let visit = begin(bench, callout);
  // What the house did before anybody came: it decides where a valve rests.
  for (const { settings: earlier } of symptoms) {
    visit = go(bench, callout, visit, { do: 'operate', settings: earlier });
  }
  visit = go(bench, callout, visit, { do: 'operate', settings });
  let moments: readonly Moment[] = [{ settings, finds: [] }];
  let left = inquiry.left(moments);
  let kept = true;
  const nexts: NextTest[] = [];
  while (nexts.length < most) {
    const here = must(moments.at(-1));
    const next = chooseNext(inquiry, moments, here, left, who);
    if (!next) break;
    nexts.push(next);
    if (Object.keys(next.changes).length > 0) {
      visit = go(bench, callout, visit, { do: 'operate', settings: next.changes });
    }
    const find = { test: next.test, outcome: outcomeAt(visit.setup, standOf(visit), next.test) };
    const there = withFind(momentAt(system, here, next.settings), find);
    const stays = Object.keys(next.changes).length === 0;
    moments = [...moments.filter((one) => one.finds.length > 0 && !(stays && one === here)), there];
    left = inquiry.left(moments);
    kept &&= left.includes(fault);
  }
  return { nexts, moments, left, kept };
}
