import { type Coursework, type Learner, readCode } from '../../course/coursework/coursework.ts';
import { type Sitting, sittingId } from '../../course/coursework/work.ts';
import { type CourseworkHash, MOST_LEARNER_NAME, readCourseworkHash } from '../../files/coursework-link.ts';
import { openStore } from '../../store/open.ts';
import { unitedSitting } from '../../store/sittings.ts';
import { fetchCoursework, fetchOutline } from '../course/shelf.ts';
import { CourseworkDesk } from './desk.svelte.ts';
import { markKept } from './kept.ts';
import { fetchNames } from './names.ts';
import { type Begun, beginWith, dealsAlike } from './standing.ts';

/*
  Everything that opens a coursework: the formats, the store and the outline. It is fetched when the page wakes.
*/

/** A coursework, and who is to do it as far as that is known. */
export type Found = CourseworkHash;
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

/** What a learner sits down at: what this device kept, or a new sitting. */
export async function startSitting(coursework: Coursework, learner: Learner): Promise<Begun> {
  const store = await openStore();
  const kept = await store.sitting(sittingId(coursework, learner));
  return beginWith(kept, coursework, learner, store.now());
}

/** A sitting out of a result: with what this device has of it, each piece of work once. */
export async function goOn(sitting: Sitting): Promise<Sitting> {
  const kept = await keptSitting(sitting.id);
  return kept && dealsAlike(kept.coursework, sitting.coursework) ? unitedSitting(kept, sitting) : sitting;
}

/** Puts a new version in the place of a sitting, whose work is saved as a file first. */
export async function replace(kept: Sitting, fresh: Sitting): Promise<Sitting> {
  const [store, { saveResult }] = await Promise.all([openStore(), import('./save.ts')]);
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
