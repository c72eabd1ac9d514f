import type { Coursework } from '../coursework/coursework.ts';
import { seedOf } from '../random.ts';

/** Data as text in which the order of keys does not matter and a key without a value is none. */
export function canonical(data: unknown): string {
  if (Array.isArray(data)) return `[${data.map(canonical).join()}]`;
  if (typeof data !== 'object' || data === null) return JSON.stringify(data) ?? 'null';
  const own = Object.entries(data).filter(([, value]) => value !== undefined);
  own.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${own.map(([key, value]) => `${JSON.stringify(key)}:${canonical(value)}`).join()}}`;
}

/** 64 bits of a text as 16 digits: tells texts apart that nobody chose to be alike. */
export function hashed(text: string): string {
  const half = (salt: string) =>
    seedOf(salt + text)
      .toString(16)
      .padStart(8, '0');
  return half('a') + half(`${text.length}/`);
}

/**
 * What of a coursework bears on marks: two with the same print ask the same things and count them alike. Words and dates
 * that are only shown do not count.
 */
export function courseworkPrint({ id, seed, variants, tasks, pass }: Coursework): string {
  // A rule that is left out means "all": it reads the same as one that is written out.
  const asked = tasks.map((task) => (task.kind === 'questions' ? { ...task, title: '' } : task));
  return canonical({ id, seed, variants, tasks: asked, pass: pass ?? tasks.length });
}
