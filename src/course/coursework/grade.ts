import { parseAddress } from '../items/index.ts';
import type { Coursework, Learner } from './coursework.ts';
import { dealJob, dealQuestion, dealVisit, visitAddress } from './deal.ts';
import { gradeVisit } from './grade-visit.ts';
import { gradeWiring } from './grade-wiring.ts';
import type { Slot } from './slots.ts';
import { type GradeSource, type Marked, reasonOf, refused } from './source.ts';
import type { Work } from './work.ts';

export type { GradeSource, Made, Marked } from './source.ts';

/** What is handed in for each kind of slot. */
const HANDED: Readonly<Record<Slot['kind'], Work['kind']>> = {
  question: 'question',
  job: 'job',
  callout: 'visit',
  fault: 'visit',
};
const SAYS: Readonly<Record<Work['kind'], string>> = {
  question: 'an answer to a question',
  job: 'a wiring',
  visit: 'a visit',
};

/**
 * Grades one piece of work anew, from what was done and never from what the file says of it. Never throws: whatever is
 * in a hostile file, a note tells it. Attempts and helps are no business of this: see `counts`.
 */
export function gradeWork(
  coursework: Coursework,
  slot: Slot,
  work: Work,
  { code }: Pick<Learner, 'code'>,
  source: GradeSource,
): Marked {
  try {
    if (slot.kind === 'question' && work.kind === 'question')
      return gradeAnswer(coursework, slot, work, code, source);
    if (slot.kind === 'job' && work.kind === 'job') {
      const { layout, variant } = dealJob(coursework, slot, code, source);
      return gradeWiring(layout.system, source.judging(layout.id), variant, work.wires);
    }
    if ((slot.kind === 'callout' || slot.kind === 'fault') && work.kind === 'visit') {
      if (visitAddress(coursework, slot, code, work.attempt) !== work.callout)
        return refused('for another', notDealt('The visit', work.callout, work.attempt, code));
      return gradeVisit(source.visit(dealVisit(coursework, slot, code, work.attempt)), work);
    }
    return refused('unknown', `Expected ${SAYS[HANDED[slot.kind]]}, found ${SAYS[work.kind] ?? 'neither'}.`);
  } catch (error) {
    return refused('unknown', `It cannot be graded: ${reasonOf(error)}.`);
  }
}

const notDealt = (what: string, address: string, attempt: number, code: string): string =>
  `${what} is about ${address.slice(0, 80)}, which ${code} was not dealt at attempt ${attempt}.`;

function gradeAnswer(
  coursework: Coursework,
  slot: Extract<Slot, { kind: 'question' }>,
  { item: address, answer, attempt }: Extract<Work, { kind: 'question' }>,
  code: string,
  source: GradeSource,
): Marked {
  const item = dealQuestion(coursework, slot, code, attempt, source);
  if (item.id !== address)
    return refused(
      parseAddress(address) ? 'for another' : 'unknown',
      notDealt('The answer', address, attempt, code),
    );
  if (answer.kind !== item.form.kind)
    return refused('unknown', `Expected an answer of kind ${item.form.kind}, found ${answer.kind}.`);
  const { right, notes } = item.judge(answer);
  return {
    right,
    made: 'as dealt',
    rules: [],
    notes: right ? [] : notes.slice(0, 1).map(({ cause }) => cause),
  };
}
