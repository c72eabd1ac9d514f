import { type Sitting, sittingId } from '../../course/coursework/work.ts';
import { parseCoursework } from '../../files/coursework.ts';
import { FileError } from '../../files/error.ts';
import { MOST_RESULT, parseResult } from '../../files/result.ts';
import { decodeText } from '../../files/text.ts';
import type { Found, Problem } from './open.ts';

/* What reads files is fetched when there is one. */

/** A coursework file, or a learner's own result to go on with. */
export async function readFile(file: File): Promise<Found | Problem | { readonly sitting: Sitting }> {
  try {
    if (file.size > MOST_RESULT) {
      const expected = `at most ${MOST_RESULT / 1e6} MB`;
      throw new FileError({ file: file.name, place: '', expected, found: 'more' });
    }
    const text = decodeText(new Uint8Array(await file.arrayBuffer()), file.name);
    if (!isResult(text)) return { coursework: parseCoursework(text, file.name) };
    const { made, ...result } = parseResult(text, file.name);
    return { sitting: { ...result, id: sittingId(result.coursework, result.learner), at: made } };
  } catch (error) {
    if (error instanceof FileError) return { problem: `This file could not be opened. ${error.message}` };
    throw error;
  }
}

/** Only a result has something handed in. */
function isResult(text: string): boolean {
  try {
    const data: unknown = JSON.parse(text);
    return typeof data === 'object' && data !== null && 'handed' in data;
  } catch {
    return false;
  }
}
