import type { Given } from './talk.ts';

/** Files that were chosen, with the folders that they lie in. */
export const chosenFiles = (list: FileList | readonly File[] | null): Given[] =>
  [...(list ?? [])]
    .filter(({ name }) => !name.startsWith('.'))
    .map((file) => ({ name: file.webkitRelativePath || file.name, blob: file }));

/** The files of a folder that was dropped, and of the folders in it. */
async function filesIn(entry: FileSystemEntry, path: string): Promise<Given[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((done, fail) => (entry as FileSystemFileEntry).file(done, fail));
    return file.name.startsWith('.') ? [] : [{ name: path + file.name, blob: file }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const inside: FileSystemEntry[] = [];
  // A reader gives at most a hundred at a time, and nothing when it is done.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) break;
    inside.push(...some);
  }
  const all = await Promise.all(inside.map((one) => filesIn(one, `${path}${entry.name}/`)));
  return all.flat();
}

/** Everything that was dropped; folders are opened. */
export async function droppedFiles(transfer: DataTransfer): Promise<Given[]> {
  // To be asked for at once: after the first wait the list is empty.
  const entries = [...transfer.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  if (entries.length === 0) return chosenFiles(transfer.files);
  const all = await Promise.all(entries.map((entry) => filesIn(entry, '')));
  return all.flat();
}

/** Offers a text as a file. */
export function saveText(name: string, text: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
