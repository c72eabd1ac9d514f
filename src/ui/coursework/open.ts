import { type Coursework, type Learner, readCode } from '../../course/coursework/coursework.ts';
import { type Sitting, sittingId } from '../../course/coursework/work.ts';
import { parseCoursework } from '../../files/coursework.ts';
import { MOST_LEARNER_NAME, readCourseworkHash } from '../../files/coursework-link.ts';
import { FileError } from '../../files/error.ts';
import { MOST_RESULT, parseResult } from '../../files/result.ts';
import { decodeText } from '../../files/text.ts';
import { openStore } from '../../store/open.ts';
import { unitedSitting } from '../../store/sittings.ts';
import { fetchCoursework, fetchOutline } from '../course/shelf.ts';
import { CourseworkDesk, dealsAlike, newSitting } from './desk.svelte.ts';
import { markKept } from './kept.ts';
import { fetchNames } from './names.ts';
import { saveResult } from './save.ts';

/*
  Everything that opens a coursework: the formats, the store and the outline. It is fetched when the page wakes.
*/

/** A coursework, and who is to do it as far as that is known. */
export interface Found {
  readonly coursework: Coursework;
  readonly code?: string;
  readonly name?: string;
}
/** Why there is none, in words. */
export interface Problem {
  readonly problem: string;
}

/** The coursework in a link. */
export const readLink = (hash: string): Found | Problem =>
  readCourseworkHash(hash) ?? { problem: 'The link has no coursework in it.' };

/** A sample coursework of this site. Rejects when it cannot be fetched. */
export const sample = async (id: string): Promise<Found | Problem> =>
  /^[a-z0-9-]+$/.test(id)
    ? { coursework: await fetchCoursework(id) }
    : { problem: 'There is no such sample coursework.' };

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

/** A learner whose code is known; undefined when it cannot be one. */
export function learnerOf(code: string, name: string): Learner | undefined {
  const own = readCode(code);
  if (own === undefined) return undefined;
  return name.trim() === '' ? { code: own } : { code: own, name: name.trim().slice(0, MOST_LEARNER_NAME) };
}

/** Sittings on this device, the latest first. */
export async function allSittings(): Promise<readonly Sitting[]> {
  return [...(await (await openStore()).sittings())].sort((a, b) => b.at - a.at);
}

export const keptSitting = async (id: string): Promise<Sitting | undefined> =>
  (await openStore()).sitting(id);

/** A sitting to sit down at: the one that is kept, with the coursework as it is now, or a new one. */
export async function startSitting(
  coursework: Coursework,
  learner: Learner,
): Promise<
  | { readonly kind: 'sitting'; readonly sitting: Sitting }
  | { readonly kind: 'changed'; readonly kept: Sitting; readonly fresh: Sitting }
> {
  const store = await openStore();
  const fresh = newSitting(coursework, learner, store.now());
  const kept = await store.sitting(fresh.id);
  if (!kept) return { kind: 'sitting', sitting: fresh };
  if (kept.work.length > 0 && !dealsAlike(kept.coursework, coursework))
    return { kind: 'changed', kept, fresh };
  // Dates, rules and tasks may have been changed by the tutor; a name may have been added.
  return {
    kind: 'sitting',
    sitting: { ...kept, at: fresh.at, coursework, learner: { ...kept.learner, ...learner } },
  };
}

/** A sitting out of a result: with what this device has of it, each piece of work once. */
export async function goOn(sitting: Sitting): Promise<Sitting> {
  const kept = await keptSitting(sitting.id);
  return kept && dealsAlike(kept.coursework, sitting.coursework) ? unitedSitting(kept, sitting) : sitting;
}

/** Puts a new version in the place of a sitting, whose work is saved as a file first. */
export async function replace(kept: Sitting, fresh: Sitting): Promise<Sitting> {
  const store = await openStore();
  saveResult(kept, store.now(), `${kept.coursework.id}-${kept.learner.code}-before.json`);
  await store.dropSitting(kept.id);
  return fresh;
}

/**
 * The desk of a sitting, which the device keeps from now on. Rejects when the outline cannot be fetched, with a
 * RangeError when the coursework names a lesson that is not there.
 */
export async function openDesk(sitting: Sitting): Promise<CourseworkDesk> {
  const [store, outline, names] = await Promise.all([openStore(), fetchOutline(), fetchNames()]);
  const desk = new CourseworkDesk(store, outline, names, sitting);
  await desk.begin();
  if (desk.trouble === '') markKept();
  return desk;
}
