import { MOST_BACKUP_BYTES } from '../../files/backup.ts';
import { FileError } from '../../files/error.ts';
import { decodeText } from '../../files/text.ts';
import { loadBackup, makeBackup } from '../../store/backup.ts';
import type { KeptStore } from '../../store/store.ts';
import { counted } from './words.ts';

/** The browser's plain storage, where it may be used. */
function plainStorage(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

/** Offers a backup as a file. @returns its name */
export async function saveBackup(store: KeptStore): Promise<string> {
  const text = await makeBackup(store, plainStorage());
  const name = `switched-live-${new Date(store.now()).toISOString().slice(0, 10)}.json`;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  return name;
}

/** How loading a file went, in words. */
export interface Outcome {
  readonly right: boolean;
  readonly says: string;
}

/** Adds a backup file's contents to what is here. */
export async function loadFile(store: KeptStore, file: File): Promise<Outcome> {
  try {
    if (file.size > MOST_BACKUP_BYTES) {
      const expected = `at most ${MOST_BACKUP_BYTES / 1e6} MB`;
      throw new FileError({ file: file.name, place: '', expected, found: 'more' });
    }
    const text = decodeText(new Uint8Array(await file.arrayBuffer()), file.name);
    const { answers, places } = await loadBackup(store, plainStorage(), text, file.name);
    const wirings = places > 0 ? ` and ${counted(places, 'wiring or bench', 'wirings and benches')}` : '';
    return {
      right: true,
      says:
        answers + places === 0
          ? 'The backup is sound. All of its answers were here already.'
          : `Added ${counted(answers, 'answer')}${wirings}. Nothing that was here has been overwritten.`,
    };
  } catch (problem) {
    const reason = problem instanceof FileError ? problem.message : 'the file could not be read';
    return { right: false, says: `Nothing has been changed. ${reason}.` };
  }
}
