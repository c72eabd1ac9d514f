import type { PartKind } from '../../engine/model/part.ts';
import { findKind, kindNames } from '../../engine/parts/index.ts';
import { type PartNote, parsePartNotes } from '../part-notes.ts';
import type { SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

/** A kind of part as its reference page needs it. */
export interface PartPage {
  readonly kind: PartKind;
  /** Left out only while somebody is still writing it: a test asks for one for every kind. */
  readonly note?: PartNote;
}

/** The project's notes on its kinds of part, by kind. */
export function loadPartNotes(root?: string): ReadonlyMap<string, PartNote> {
  const [file] = filesIn('content', 'parts.yaml', root);
  return file ? parsePartNotes(file.text, file.name) : new Map();
}

/**
 * Every kind of part with its note, in the order of the titles. A kind with options comes as it is without any.
 * @throws FileError naming the place when the notes do not parse
 */
export function partPages(root?: string): PartPage[] {
  const notes = loadPartNotes(root);
  return kindNames()
    .flatMap((name) => findKind(name, {}) ?? [])
    .map((kind): PartPage => {
      const note = notes.get(kind.kind);
      return note ? { kind, note } : { kind };
    })
    .sort((a, b) => a.kind.title.localeCompare(b.kind.title, 'en'));
}

/** The systems that have a part of this kind. */
export const systemsWith = <T extends Pick<SystemFile, 'spec'>>(kind: string, systems: readonly T[]): T[] =>
  systems.filter(({ spec }) => Object.values(spec.parts).some((part) => part.kind === kind));
