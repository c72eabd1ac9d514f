import type { Kept } from '../wiring/keep.ts';

/** What a tutor's desk keeps: each kind of file has its drafts, each under a key of its own. */
export type DeskKind = 'job' | 'stage' | 'coursework';

const folder = (kind: DeskKind): string => `switched-live/author/1/${kind}/`;
const openKey = (kind: DeskKind): string => `switched-live/author-open/${kind}`;

export interface KeptDraft<T> {
  readonly id: string;
  readonly draft: T;
}

/** Does something with the device's storage and says how it went. */
function tried(what: () => void): Kept {
  try {
    what();
    return 'kept';
  } catch (problem) {
    return problem instanceof DOMException && problem.name === 'QuotaExceededError' ? 'full' : 'blocked';
  }
}

export const keepDraft = <T>(kind: DeskKind, { id, draft }: KeptDraft<T>): Kept =>
  tried(() => localStorage.setItem(folder(kind) + id, JSON.stringify(draft)));

export const forgetDraft = (kind: DeskKind, id: string): Kept =>
  tried(() => localStorage.removeItem(folder(kind) + id));

export const keepOpen = (kind: DeskKind, id: string): Kept =>
  tried(() => localStorage.setItem(openKey(kind), id));

/** A draft of this device by its name, or undefined when it is not there or cannot be read. */
export function keptDraft<T>(
  kind: DeskKind,
  id: string,
  read: (data: unknown) => T | undefined,
): T | undefined {
  try {
    const text = localStorage.getItem(folder(kind) + id);
    return text === null ? undefined : read(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** Every draft of a kind that can be read, the oldest first, and which was open last. The others stay where they are. */
export function keptDrafts<T>(
  kind: DeskKind,
  read: (data: unknown) => T | undefined,
): { readonly drafts: KeptDraft<T>[]; readonly open: string | undefined } {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(folder(kind)));
    const drafts = keys.sort().flatMap((key): KeptDraft<T>[] => {
      const id = key.slice(folder(kind).length);
      const draft = keptDraft(kind, id, read);
      return draft === undefined ? [] : [{ id, draft }];
    });
    return { drafts, open: localStorage.getItem(openKey(kind)) ?? undefined };
  } catch {
    return { drafts: [], open: undefined };
  }
}

/** The draft that a change of the device's storage is about, made in another window; undefined for any other change. */
export const draftOfKey = (kind: DeskKind, key: string | null): string | undefined =>
  key?.startsWith(folder(kind)) ? key.slice(folder(kind).length) : undefined;
