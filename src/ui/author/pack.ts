import { strToU8, unzlibSync, zlibSync } from 'fflate';
import { FileError } from '../../files/error.ts';

/** A link longer than this is not one of ours: browsers and mail programs cut longer ones. */
const MOST_LETTERS = 30_000;
/** What a link may unpack to. */
const MOST_BYTES = 200_000;

/** Text as a piece of a link: packed, in base64url. */
export function packText(text: string): string {
  const bytes = zlibSync(strToU8(text), { level: 9 });
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}

/** The text that a link carries, or a sentence that says why it cannot be read. */
export function unpackText(letters: string): string | { readonly problem: string } {
  if (letters.length > MOST_LETTERS) return { problem: 'The link is too long.' };
  try {
    const raw = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
    const packed = Uint8Array.from(raw, (letter) => letter.charCodeAt(0));
    // Never writes beyond this room, whatever the bytes claim to hold.
    const bytes = unzlibSync(packed, { out: new Uint8Array(MOST_BYTES + 1) });
    if (bytes.length > MOST_BYTES) return { problem: 'The link holds too much.' };
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { problem: 'The link is damaged: copy it again, whole.' };
  }
}

/** What a link carries, read as a file is; or a sentence that says why it cannot be. */
export function openText<T extends object>(
  letters: string,
  parse: (text: string, file: string) => T,
): T | { readonly problem: string } {
  const text = unpackText(letters);
  if (typeof text !== 'string') return text;
  try {
    return parse(text, 'The link');
  } catch (error) {
    if (error instanceof FileError) return { problem: `${error.message}.` };
    throw error;
  }
}
