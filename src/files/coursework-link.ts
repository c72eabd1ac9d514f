import { deflateSync, inflateSync } from 'fflate';
import { type Coursework, readCode } from '../course/coursework/coursework.ts';
import { orderedCoursework } from './coursework-order.ts';
import { MOST_COURSEWORK, readCoursework } from './coursework-schema.ts';
import { FileError } from './error.ts';

/** The version of the text in a link: its first byte. */
const VERSION = 1;
/** A link longer than this is no coursework: mail programs cut longer ones. */
export const MOST_LINK = 16_000;
/** Letters of a name. */
export const MOST_LEARNER_NAME = 80;

interface Problem {
  readonly problem: string;
}

const damaged: Problem = { problem: 'The link is damaged: copy it again, whole.' };

/** A coursework as text for a link: a version byte, then its JSON deflated, in base64url. */
export function courseworkToLink(coursework: Coursework): string {
  const json = new TextEncoder().encode(JSON.stringify(orderedCoursework(coursework)));
  const bytes = [VERSION, ...deflateSync(json, { level: 9 })];
  const text = btoa(bytes.map((byte) => String.fromCharCode(byte)).join(''));
  return text.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Deflated bytes as text; undefined when they are none, or come to more than a coursework may have. */
function inflated(bytes: Uint8Array): string | undefined {
  try {
    // Never writes beyond this room, whatever the bytes claim to hold.
    const out = inflateSync(bytes, { out: new Uint8Array(MOST_COURSEWORK + 1) });
    if (out.length > MOST_COURSEWORK) return undefined;
    return new TextDecoder('utf-8', { fatal: true }).decode(out);
  } catch {
    return undefined;
  }
}

/** The coursework that a link carries, or a sentence that says why it cannot be read. */
export function courseworkFromLink(text: string): Coursework | Problem {
  if (text.length > MOST_LINK) return { problem: 'The link is too long to be a coursework.' };
  if (!/^[A-Za-z0-9_-]+$/.test(text)) return damaged;
  try {
    const letters = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    if (bytes[0] !== VERSION) return { problem: 'The link was made by another version of this page.' };
    const json = inflated(bytes.subarray(1));
    return json === undefined ? damaged : readCoursework(JSON.parse(json), 'The link');
  } catch (error) {
    return error instanceof FileError ? { problem: `${error.message}.` } : damaged;
  }
}

/** What an address that opens a coursework carries: the coursework, and the learner where it is known. */
export interface CourseworkHash {
  readonly coursework: Coursework;
  /** A sound learner code. */
  readonly code?: string;
  readonly name?: string;
}

/**
 * Reads the fragment of an address: `#c=…`, with `&code=…&name=…` where the learner is known. A code that cannot be one
 * is left out. Undefined for a fragment without a coursework.
 */
export function readCourseworkHash(hash: string): CourseworkHash | Problem | undefined {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  const text = said.get('c');
  if (text === null) return undefined;
  const coursework = courseworkFromLink(text);
  if ('problem' in coursework) return coursework;
  const code = readCode(said.get('code') ?? '');
  const name = (said.get('name') ?? '').trim().slice(0, MOST_LEARNER_NAME);
  return { coursework, ...(code !== undefined && { code }), ...(name !== '' && { name }) };
}

/** The fragment of an address that opens a coursework, with its `#`. */
export function writeCourseworkHash({ coursework, code, name }: CourseworkHash): string {
  const said = new URLSearchParams({
    c: courseworkToLink(coursework),
    ...(code !== undefined && { code }),
    ...(name !== undefined && { name }),
  });
  return `#${said}`;
}
