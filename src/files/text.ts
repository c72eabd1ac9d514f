import { FileError } from './error.ts';
import { lineColumn } from './place.ts';

/**
 * Text out of bytes that should be UTF-8.
 * @throws FileError with the line and column of the first byte that is not
 */
export function decodeText(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    // The longest start that is sound, by halving: it may end inside a character, hence `stream`.
    let sound = 0;
    for (let bad = bytes.length; sound + 1 < bad; ) {
      const middle = (sound + bad) >> 1;
      if (decodes(bytes.subarray(0, middle))) sound = middle;
      else bad = middle;
    }
    const before = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes.subarray(0, sound), {
      stream: true,
    });
    const byte = bytes[new TextEncoder().encode(before).length]?.toString(16).padStart(2, '0');
    const found = `the byte 0x${byte}`;
    throw new FileError({ file, place: lineColumn(before, before.length), expected: 'text in UTF-8', found });
  }
}

function decodes(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
