import type { Sitting } from '../../course/coursework/work.ts';
import { writeResult } from '../../files/result.ts';

/** Offers a learner's result as a file. @param made milliseconds since 1970 */
export function saveResult(sitting: Sitting, made: number, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([writeResult(sitting, made)], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
