import type { Coursework } from '../../course/coursework/coursework.ts';
import { MOST_COURSEWORK, parseCoursework, writeCoursework } from '../../files/coursework.ts';
import { readCourseworkHash } from '../../files/coursework-link.ts';
import { FileError } from '../../files/error.ts';
import { decodeText } from '../../files/text.ts';

/** The tutor's coursework, where it came from, and its text to be kept. */
export interface Tutors {
  readonly coursework: Coursework;
  readonly file: string;
  readonly text: string;
}

interface Problem {
  readonly problem: string;
}

/** A coursework out of a file. */
export async function readTutors(blob: Blob, file: string): Promise<Tutors | Problem> {
  try {
    if (blob.size > 4 * MOST_COURSEWORK)
      return {
        problem: `${file}: expected a coursework, found a file of ${Math.round(blob.size / 1000)} kB.`,
      };
    const text = decodeText(new Uint8Array(await blob.arrayBuffer()), file);
    return { coursework: parseCoursework(text, file), file, text };
  } catch (error) {
    return { problem: error instanceof FileError ? `${error.message}.` : `${file} could not be read.` };
  }
}

/** A coursework out of the link that learners were given. */
export function linkedTutors(link: string): Tutors | Problem {
  const hash = link.includes('#') ? link.slice(link.indexOf('#')) : `#c=${link.trim()}`;
  const read = readCourseworkHash(hash.trim());
  if (read === undefined)
    return { problem: 'Expected the link of a coursework, with #c= in it, found another one.' };
  if ('problem' in read) return read;
  const { coursework } = read;
  return { coursework, file: 'a link', text: writeCoursework(coursework) };
}
