import { type DBSchema, deleteDB, openDB } from 'idb';
import { owned } from '../../store/owner.ts';
import type { Given } from './talk.ts';

/** A sign on the device that a class is kept: the page wakes at once where it stands. */
export const KEPT = 'switched-live/mark-book';
const NAME = 'switched-live-mark-book';

interface Schema extends DBSchema {
  readonly class: { key: 'open'; value: KeptClass };
}

/** A class as it is kept on the device, at the tutor's wish: the files as they were given. */
export interface KeptClass {
  readonly files: readonly Given[];
  /** The tutor's coursework as YAML, with the name of its file. */
  readonly coursework?: { readonly text: string; readonly file: string };
}

const open = () =>
  openDB<Schema>(owned(NAME), 1, {
    upgrade: (database) => {
      database.createObjectStore('class');
    },
  });

/** Keeps the open class on this device. Rejects when there is no room or no storage. */
export async function keepClass(kept: KeptClass): Promise<void> {
  const database = await open();
  try {
    await database.put('class', kept, 'open');
    localStorage.setItem(owned(KEPT), '1');
  } finally {
    database.close();
  }
}

/** The class that was kept, if any. */
export async function keptClass(): Promise<KeptClass | undefined> {
  try {
    if (localStorage.getItem(owned(KEPT)) === null) return undefined;
    const database = await open();
    try {
      return await database.get('class', 'open');
    } finally {
      database.close();
    }
  } catch {
    return undefined;
  }
}

/** Takes the class off the device again. */
export async function forgetClass(): Promise<void> {
  localStorage.removeItem(owned(KEPT));
  await deleteDB(owned(NAME));
}
