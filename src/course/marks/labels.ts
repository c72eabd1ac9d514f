import type { Slot } from '../coursework/slots.ts';
import { findMaker } from '../items/index.ts';
import type { Objective } from '../task.ts';

/** What slots are called in lists, by their ids. */
export type Labels = ReadonlyMap<string, string>;

/** Titles of what slots name. Each may throw for what is not there: then the id stands. */
export interface Titles {
  readonly objectives: (lesson: string) => readonly Objective[];
  readonly job: (id: string) => string;
  readonly callout: (id: string) => string;
  readonly layout: (id: string) => string;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What each slot is about, in a few words. */
export function labelSlots(slots: readonly Slot[], titles: Titles): Labels {
  const say = (slot: Slot): string => {
    try {
      switch (slot.kind) {
        case 'question': {
          if (slot.task.kind === 'lesson') {
            const found = titles.objectives(slot.task.lesson).find(({ id }) => id === slot.objective);
            return capital(found?.says ?? slot.objective);
          }
          return slot.task.kind === 'questions' ? slot.task.title : (findMaker(slot.about.make)?.title ?? '');
        }
        case 'job':
          return titles.job(slot.job);
        case 'callout':
          return titles.callout(slot.callout);
        case 'fault':
          return `A fault in: ${titles.layout(slot.system)}`;
      }
    } catch {
      return slot.objective;
    }
  };
  return new Map(slots.map((slot) => [slot.id, say(slot)]));
}
