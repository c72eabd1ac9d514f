import { madeCallout, wiringOfSeed } from '../../../course/callouts/made.ts';
import { alikeGroups } from '../../../engine/diagnose/alike.ts';
import { type Bench, makeBench } from '../../../engine/diagnose/bench.ts';
import { allCandidates, type Callout } from '../../../engine/diagnose/callout.ts';
import type { Candidate } from '../../../engine/diagnose/candidate.ts';
import { nextStep } from '../../../engine/diagnose/expert.ts';
import { judgeVisit } from '../../../engine/diagnose/judge.ts';
import { type Search, searchOn, startSearch } from '../../../engine/diagnose/search.ts';
import { buildSystem } from '../../../engine/model/build.ts';
import type { Wire } from '../../../engine/model/wiring.ts';
import { findKind } from '../../../engine/parts/index.ts';
import { candidatesFor } from '../../../files/callout-pack.ts';
import { makeLayout } from '../../../files/layout-file.ts';
import { sayCleared } from '../cleared.ts';
import type { Answered, Answers, Asked, Left, Made, Question, Sent } from './messages.ts';

/** So few candidates are told by name. */
const FEW = 24;

/** A wired system with everything that may be wrong in it. */
interface Suspects {
  readonly bench: Bench;
  readonly wires: readonly Wire[];
  readonly candidates: readonly Candidate[];
}

/** A search under way, and what was possible after each entry, from the door on. */
interface Run extends Suspects {
  readonly search: Search;
  readonly possible: readonly (readonly Candidate[])[];
}

let run: Run | undefined;

function opened({ spec, doubles, ...rest }: Sent): Suspects & { readonly callout: Callout } {
  const system = buildSystem(spec, findKind);
  const { wires } = rest;
  const candidates = allCandidates(system, wires, doubles);
  return { bench: makeBench(system), wires, candidates, callout: { ...rest, system } };
}

/** Whether a candidate is several faults at once. */
const isDouble = ({ failures, misplaced, strays }: Candidate): boolean =>
  failures.length + misplaced.length + strays.length > 1;

function wentTo(suspects: Suspects, search: Search, before: Run['possible']): Left {
  const now = search.worlds.map(({ candidate }) => candidate);
  const possible = [...before, now];
  run = { ...suspects, search, possible };
  const groups = now.length <= FEW && alikeGroups(suspects.bench, suspects.wires, now);
  return {
    left: now.length,
    atFirst: possible[0]?.length ?? 0,
    ...(groups && { groups: groups.map((group) => group.map(({ says }) => says)) }),
  };
}

function underWay(): Run {
  if (!run) throw new Error('no search was begun');
  return run;
}

/** What it takes to answer each question. */
const answers: { readonly [Do in Question['do']]: (asked: Extract<Question, { do: Do }>) => Answers[Do] } = {
  begin({ callout: sent }) {
    const { callout, ...known } = opened(sent);
    return wentTo(known, startSearch(known.bench, callout, known.candidates), []);
  },
  tell({ entry }) {
    const { search, possible, ...known } = underWay();
    return wentTo(known, searchOn(known.bench, search, entry), possible);
  },
  next() {
    const { bench, search } = underWay();
    return nextStep(bench, search.setup, search.worlds);
  },
  cleared() {
    const { bench, possible } = underWay();
    return possible.slice(1).map((after, k) => sayCleared(bench.system, possible[k] ?? [], after));
  },
  judge({ callout: sent, acts, said }) {
    const { bench, callout, candidates } = opened(sent);
    const named = candidates.find(({ id }) => id === said);
    if (!named) throw new Error(`no candidate "${said}"`);
    return judgeVisit(bench, callout, candidates, acts, named);
  },
  make({ layout: file, doubles, seed, level }): Made {
    const layout = makeLayout(file);
    const candidates = candidatesFor(layout, wiringOfSeed(layout, seed).id, doubles);
    const made = madeCallout(layout, makeBench(layout.system), candidates, { seed, level });
    const { system: _, ...callout } = made.callout;
    return { ...made, callout, doubles: candidates.filter(isDouble) };
  },
};

function answered({ id, ...question }: Asked): Answered {
  try {
    const answer = answers[question.do] as (asked: typeof question) => Answers[Question['do']];
    return { id, answer: answer(question) };
  } catch (error) {
    return { id, error: error instanceof Error ? error.message : String(error) };
  }
}

self.onmessage = ({ data }: MessageEvent<Asked>) => postMessage(answered(data));
