import { calloutObjectives } from '../../course/callouts/objectives.ts';
import type { Slot } from '../../course/coursework/slots.ts';
import type { Work } from '../../course/coursework/work.ts';
import type { Answer } from '../../course/item.ts';
import { type Outline, objectivesOf } from '../../course/outline.ts';
import { seedOf } from '../../course/random.ts';
import type { Trial } from '../../course/trial.ts';
import { trialKey } from '../../store/records.ts';
import type { AnswerKind, Interaction } from './report.ts';

/** How questions are answered, by their maker: a log keeps the address of a question, and not the answer. */
const KINDS: Readonly<Record<string, AnswerKind>> = {
  choice: 'choice',
  'enough-to-fail': 'choice',
  'name-layout': 'choice',
  'spot-mistake': 'choice',
  'valve-goes': 'choice',
  'what-works': 'choice',
  'dead-test': 'choice',
  'live-terminals': 'choice',
  'where-stops': 'choice',
  order: 'order',
  'path-order': 'order',
  'place-lead': 'match',
  'set-switches': 'match',
  'meter-reading': 'number',
  sum: 'number',
};

/** A name of which only letters, digits, hyphens and underscores are left. */
const safe = (name: string): string => name.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 60);

/** How a trial's question was answered. */
export const kindOf = ({ item }: Pick<Trial, 'item'>): AnswerKind =>
  KINDS[item.split('/')[0] ?? ''] ?? 'work';

/** Answers of the course as interactions. What came back from the platform is known to it already. */
export function trialInteractions(outline: Outline, trials: readonly Trial[]): Interaction[] {
  const says = new Map([...objectivesOf(outline), ...calloutObjectives].map((one) => [one.id, one.says]));
  return trials
    .filter(({ item }) => !item.startsWith('resumed/'))
    .map((trial) => ({
      key: `${safe(trial.objective)}-${trial.at.toString(36)}-${(seedOf(trialKey(trial)) % 46_656).toString(36)}`,
      objective: trial.objective,
      says: says.get(trial.objective) ?? trial.objective,
      kind: kindOf(trial),
      right: trial.right,
      at: trial.at,
      took: trial.took,
    }));
}

/** How a piece of work was answered, and what was answered. */
function answered(work: Work): Pick<Interaction, 'kind' | 'response'> {
  switch (work.kind) {
    case 'job':
      return { kind: 'work', response: { kind: 'match', pairs: work.wires } };
    case 'visit':
      return { kind: 'work', response: { kind: 'match', pairs: [['said', work.said]] } };
    case 'question':
      return answerOf(work.answer);
  }
}

function answerOf(answer: Answer): Pick<Interaction, 'kind' | 'response'> {
  switch (answer.kind) {
    case 'choice':
      return { kind: 'choice', response: { kind: 'choice', ids: answer.chosen } };
    case 'mark':
      return { kind: 'choice', response: { kind: 'choice', ids: answer.marked } };
    case 'place':
      return { kind: 'match', response: { kind: 'match', pairs: Object.entries(answer.landed) } };
    case 'set':
      return { kind: 'match', response: { kind: 'match', pairs: Object.entries(answer.settings) } };
    case 'order':
      return { kind: 'order', response: { kind: 'order', ids: answer.steps } };
    case 'number':
      return { kind: 'number', response: { kind: 'number', typed: answer.typed } };
  }
}

/** Work of a coursework as interactions. */
export function workInteractions(slots: readonly Slot[], work: readonly Work[]): Interaction[] {
  const objectives = new Map(slots.map(({ id, objective }) => [id, objective]));
  return work.map((one) => ({
    key: `${safe(one.slot)}-${one.attempt}-${one.at.toString(36)}`,
    objective: objectives.get(one.slot) ?? one.slot,
    says: `${one.slot}, attempt ${one.attempt}`,
    ...answered(one),
    right: one.right,
    at: one.at,
    took: one.took,
  }));
}
