import { FileError } from '../../files/error.ts';
import { placeAt } from '../../files/place.ts';
import { decodeText } from '../../files/text.ts';
import { href } from '../shell/href.ts';

/** A file of a tutor's has at most so many bytes. */
const MOST_BYTES = 1 << 20;

/** Offers text as a file. */
export function saveText(name: string, text: string, type = 'application/yaml'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // The browser has taken its copy by then.
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/**
 * The text of a chosen file.
 * @throws FileError when it is too big, or no text
 */
export async function readText(file: File): Promise<string> {
  if (file.size > MOST_BYTES)
    throw new FileError({
      file: file.name,
      place: placeAt([]),
      expected: `at most ${MOST_BYTES} bytes`,
      found: String(file.size),
    });
  return decodeText(new Uint8Array(await file.arrayBuffer()), file.name);
}

/** A name for files and ids out of a title: small letters, digits and hyphens, the first a letter. */
export const slugOf = (title: string): string =>
  title
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+/, '')
    .slice(0, 60)
    .replace(/-+$/, '');

/** The address of a format's published schema on the site that the page is on. */
export const schemaAddress = (format: string): string =>
  new URL(href(`/schema/${format}.json`), location.href).href;
