import { readCallout } from '../../course/callouts/address.ts';
import { saySettings } from '../../course/callouts/settings-words.ts';
import type { Slot } from '../../course/coursework/slots.ts';
import type { Work } from '../../course/coursework/work.ts';
import type { Answer } from '../../course/item.ts';
import { makeItem, parseAddress } from '../../course/items/index.ts';
import { slipsOf } from '../../course/marks/own-numbers.ts';
import { saySlip } from '../../course/marks/slip-words.ts';
import { sayList } from '../../course/marks/words.ts';
import { begin, go } from '../../engine/diagnose/replay.ts';
import type { System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import type { Severity } from '../../engine/rules/rule.ts';
import { sayEntry } from '../callout/notes.ts';
import { fetchGradeSource } from '../course/grading.ts';
import { fetchJob, fetchLayoutOf, fetchShelf } from '../course/shelf.ts';
import { sayAnswer } from '../items/answer.ts';
import { judgeOf } from '../wiring/judging.ts';

/** A rule that a wiring breaks, with the state that shows it. */
interface Finding {
  readonly severity: Severity;
  readonly fails: string;
  readonly says: string;
  /** The first failing state in words; empty where it is the system at rest. */
  readonly when: string;
  readonly failing: number;
}

/** A piece of work as a tutor looks at it. */
export type Explained =
  | {
      readonly kind: 'wiring';
      readonly system: System;
      readonly wires: readonly Wire[];
      readonly wrong: readonly Wire[];
      readonly missing: readonly Wire[];
      readonly states: number;
      readonly findings: readonly Finding[];
      /** What is wrong, in the learner's own numbers. */
      readonly slips: readonly string[];
    }
  | {
      readonly kind: 'lines';
      readonly ask: string;
      readonly lines: readonly string[];
      readonly steps: readonly string[];
    };

/** Everything about one piece of work, worked out from the work itself. Rejects for work that is about nothing here. */
export function explain(work: Work, slot: Slot): Promise<Explained> {
  if (work.kind === 'job') return explainWiring(work.wires, slot);
  return work.kind === 'question' ? explainAnswer(work.item, work.answer) : explainVisit(work, slot);
}

async function explainWiring(given: readonly Wire[], slot: Slot): Promise<Explained> {
  if (slot.kind !== 'job') throw new Error('a wiring was handed in where none was asked for');
  const { system, right } = await fetchLayoutOf((await fetchJob(slot.job)).system);
  const wires = given.filter(([a, b]) => a !== b && system.nodeOf.has(a) && system.nodeOf.has(b));
  const { judge } = await judgeOf(system);
  const { findings, states, accepted } = judge(wires);
  const { change } = slipsOf(
    system,
    wires,
    right.map((one) => one.wires),
  );
  const marked = accepted ? { wrong: [], missing: [] } : { wrong: change.lift, missing: change.land };
  return {
    kind: 'wiring',
    system,
    wires,
    ...marked,
    states,
    findings: findings.map(({ severity, fails, says, inputs, failing }) => ({
      severity,
      fails,
      says,
      when: sayList(saySettings(system, inputs)),
      failing,
    })),
    slips: accepted ? [] : ownSlips(system, marked),
  };
}

/** The change as slips, in the learner's own numbers: a lead that is lifted and landed elsewhere is one. */
function ownSlips(
  system: System,
  { wrong, missing }: { wrong: readonly Wire[]; missing: readonly Wire[] },
): string[] {
  const left = [...missing];
  const isPart = (end: string) => !end.startsWith('strip/');
  const said = wrong.map((there) => {
    const at = left.findIndex((one) => one.some((end) => isPart(end) && there.includes(end)));
    const [home] = at < 0 ? [] : left.splice(at, 1);
    return saySlip(system, home ? { there, missing: home } : { there });
  });
  return [...said, ...left.map((one) => saySlip(system, { missing: one }))];
}

async function explainAnswer(address: string, answer: Answer): Promise<Explained> {
  const found = parseAddress(address);
  if (!found) throw new Error(`there is no question ${address.slice(0, 60)}`);
  const item = makeItem(await fetchShelf([found.task]), found.task, found.seed, found.level);
  return {
    kind: 'lines',
    ask: item.ask,
    lines: [
      `Answered: ${sayAnswer(item.form, answer).join('; ') || 'nothing'}`,
      `Right: ${sayAnswer(item.form, item.answer).join('; ') || 'nothing'}`,
    ],
    steps: item.steps,
  };
}

async function explainVisit(work: Extract<Work, { kind: 'visit' }>, slot: Slot): Promise<Explained> {
  const address = readCallout(work.callout);
  if (!address) throw new Error(`there is no callout ${work.callout.slice(0, 60)}`);
  const source = await fetchGradeSource([
    { id: 'look', title: '', variants: 'own', seed: 0, tasks: [slot.task] },
  ]);
  const { bench, callout, candidates } = source.visit(address);
  let visit = begin(bench, callout);
  let broke = '';
  for (const act of work.acts)
    try {
      visit = go(bench, callout, visit, act);
    } catch (error) {
      broke = error instanceof Error ? error.message : String(error);
      break;
    }
  const said = candidates.find(({ id }) => id === work.said)?.says ?? work.said.slice(0, 80);
  return {
    kind: 'lines',
    ask: `It was: ${callout.fault.says}.`,
    lines: [
      ...visit.entries.map((entry) => {
        const breach = entry.breaches.length > 0 ? ` (breach: ${entry.breaches.join(', ')})` : '';
        return `${sayEntry(callout.system, entry)}${breach}`;
      }),
      ...(broke ? [`What was done next cannot be done: ${broke}`] : []),
      `Said: ${said}.`,
    ],
    steps: [],
  };
}
