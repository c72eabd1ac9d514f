import { writeCallout } from '../../../course/callouts/address.ts';
import { customerWords } from '../../../course/callouts/words.ts';
import type { Coursework } from '../../../course/coursework/coursework.ts';
import { dealVisit } from '../../../course/coursework/deal.ts';
import { type JobVariant, jobVariant } from '../../../course/coursework/job-variant.ts';
import { type Slot, slotsOf, variantSeed } from '../../../course/coursework/slots.ts';
import type { Layout } from '../../../course/layout.ts';
import { judgeFor } from '../../../engine/grade/judge-for.ts';
import { Searcher } from '../../callout/search/searcher.ts';
import { fetchDoubles, fetchJob, fetchLayoutOf } from '../../course/shelf.ts';
import { askTask } from '../../items/bank.ts';
import type { Question } from '../../items/question.ts';

/** What a learner is given for the first thing of a task. */
export type Dealt = { readonly code: string } & (
  | { readonly kind: 'job'; readonly layout: Layout; readonly variant: JobVariant }
  | { readonly kind: 'question'; readonly question: Question }
  | { readonly kind: 'fault'; readonly customer: string; readonly fault: string; readonly address: string }
);

const CODES = ['AB-1', 'AB-2', 'AB-3'] as const;

/**
 * What three learners are given for a task, as the learner's page deals it. Lessons and authored callouts have nothing
 * that differs in a way that can be shown here.
 * Rejects when a file cannot be fetched.
 */
export async function dealThree(coursework: Coursework, task: string): Promise<Dealt[]> {
  // Lessons are not dealt here, so their objectives need not be known.
  const slot = slotsOf(coursework, () => []).find((one) => one.task.id === task);
  if (!slot) return [];
  switch (slot.kind) {
    case 'job': {
      const job = await fetchJob(slot.job);
      const layout = await fetchLayoutOf(job.system);
      const { judge } = judgeFor(layout.system);
      return CODES.map((code) => ({
        kind: 'job',
        code,
        layout,
        variant: jobVariant(job, layout, judge, variantSeed(coursework, code, slot, 1)),
      }));
    }
    case 'question':
      return Promise.all(
        CODES.map(async (code) => ({
          kind: 'question' as const,
          code,
          question: await askTask(slot.about, variantSeed(coursework, code, slot, 1), slot.level),
        })),
      );
    case 'fault':
      return faults(coursework, slot);
    default:
      return [];
  }
}

async function faults(coursework: Coursework, slot: Extract<Slot, { kind: 'fault' }>): Promise<Dealt[]> {
  const [layout, doubles] = await Promise.all([fetchLayoutOf(slot.system), fetchDoubles()]);
  const searcher = new Searcher();
  try {
    const dealt: Dealt[] = [];
    for (const code of CODES) {
      const address = dealVisit(coursework, slot, code, 1);
      if (address.kind !== 'made') continue;
      const { callout, family } = await searcher.make(layout, doubles, address.seed, address.level);
      const told = { family, complaints: callout.complaints };
      dealt.push({
        kind: 'fault',
        code,
        customer: customerWords(layout.system, told, address.seed),
        fault: callout.fault.says,
        address: writeCallout(address),
      });
    }
    return dealt;
  } finally {
    searcher.stop();
  }
}
