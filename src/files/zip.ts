import { Inflate, strFromU8 } from 'fflate';
import { FileError } from './error.ts';

/** How much a zip may hold: a class's work, and nothing that fills the memory. */
export interface ZipLimits {
  /** Bytes of the zip itself. */
  readonly packed: number;
  /** Files in it, folders not counted. */
  readonly files: number;
  /** Bytes of one file and of all files, unpacked. */
  readonly each: number;
  readonly all: number;
  /** How many times bigger than packed a file may be; small files may be more. Text seldom packs better than 1 : 60. */
  readonly ratio: number;
}

export const zipLimits: ZipLimits = {
  packed: 250_000_000,
  files: 3000,
  each: 2_000_000,
  all: 400_000_000,
  ratio: 200,
};

/** A file out of a zip, with the zip's name in front: `class.zip › AB-1/week.json`. */
export interface Unpacked {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Zip {
  readonly files: readonly Unpacked[];
  /** What was left out, each with its name and the reason. */
  readonly troubles: readonly FileError[];
}

// Signatures and layouts: APPNOTE.TXT 6.3.10 (PKWARE, 2022), 4.3.7, 4.3.12 and 4.3.16.
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END_SIZE = 22;
const CENTRAL_SIZE = 46;
const LOCAL_SIZE = 30;
/** A comment after the end has at most so many bytes. */
const MOST_COMMENT = 0xffff;

/** Unpacked in steps so small that even the worst of them swells to a few megabytes only. */
const STEP = 4096;
/** So small a file is never a bomb, however well it packs. */
const SMALL = 100_000;

/** One line of the list at the end of a zip: what it says of a file. Nothing of it is trusted. */
interface Entry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  /** Where the file's own header starts. */
  readonly at: number;
}

/** Whether bytes begin as a zip does, an empty one too. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 &&
  bytes[1] === 0x4b &&
  ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6));

/** What a computer adds by itself, and nobody handed in. */
const isLitter = (name: string): boolean =>
  /(^|\/)(__MACOSX\/|\.DS_Store$|Thumbs\.db$|desktop\.ini$|\._)/i.test(name);

/**
 * The files of a zip. A file that is damaged, too big or oddly named is left out and named; the rest is read.
 * @throws FileError when it is no zip at all, or holds more than one may
 */
export function readZip(bytes: Uint8Array, file: string, limits: ZipLimits = zipLimits): Zip {
  if (bytes.length > limits.packed)
    throw refuse(file, `a zip of at most ${sayBytes(limits.packed)}`, sayBytes(bytes.length));
  const entries = listEntries(bytes, file, limits);
  const files: Unpacked[] = [];
  const troubles: FileError[] = [];
  let total = 0;
  for (const entry of entries) {
    if (entry.name.endsWith('/') || isLitter(entry.name)) continue;
    const name = `${file} › ${entry.name}`;
    try {
      const unpacked = unpack(bytes, entry, name, limits);
      total += unpacked.length;
      if (total > limits.all)
        throw refuse(file, `at most ${sayBytes(limits.all)} when unpacked`, `more, up to ${entry.name}`);
      files.push({ name, bytes: unpacked });
    } catch (error) {
      if (!(error instanceof FileError) || error.file === file) throw error;
      troubles.push(error);
    }
  }
  return { files, troubles };
}

const refuse = (file: string, expected: string, found: string) =>
  new FileError({ file, place: '', expected, found });

const sayBytes = (count: number): string =>
  count >= 1e6 ? `${Math.round(count / 1e5) / 10} MB` : `${Math.ceil(count / 1000)} kB`;

/** The list at the end of the zip. */
function listEntries(bytes: Uint8Array, file: string, limits: ZipLimits): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const damaged = (found: string) => refuse(file, 'a whole zip', found);
  let end = bytes.length - END_SIZE;
  const first = Math.max(0, end - MOST_COMMENT);
  while (end >= first && view.getUint32(end, true) !== END) end--;
  if (end < first || end < 0) throw damaged('one that is cut off, or no zip');
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count === 0xffff || at === 0xffffffff) throw refuse(file, 'a plain zip', 'one in the 64-bit form');
  if (count > 2 * limits.files)
    throw refuse(file, `a zip of at most ${limits.files} files`, `one of ${count}`);

  const entries: Entry[] = [];
  for (let k = 0; k < count; k++) {
    if (at + CENTRAL_SIZE > end || view.getUint32(at, true) !== CENTRAL)
      throw damaged(`a list that breaks after ${k} of ${count} files`);
    const flags = view.getUint16(at + 8, true);
    const lengths = [28, 30, 32].map((offset) => view.getUint16(at + offset, true));
    const [name = 0, extra = 0, comment = 0] = lengths;
    const from = at + CENTRAL_SIZE;
    if (from + name > end) throw damaged(`a list that breaks after ${k} of ${count} files`);
    entries.push({
      // Bit 11: the name is UTF-8; else an old code page, of which only the Latin letters are kept apart.
      name: strFromU8(bytes.subarray(from, from + name), (flags & 0x800) === 0),
      method: view.getUint16(at + 10, true),
      encrypted: (flags & 1) !== 0,
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at = from + name + extra + comment;
  }
  const wanted = entries.filter(({ name }) => !name.endsWith('/')).length;
  if (wanted > limits.files) throw refuse(file, `a zip of at most ${limits.files} files`, `one of ${wanted}`);
  return entries;
}

/** One file, unpacked no further than it may be, whatever its header says. */
function unpack(bytes: Uint8Array, entry: Entry, name: string, limits: ZipLimits): Uint8Array {
  const { method, encrypted, crc, packed, size, at } = entry;
  const isAstray = entry.name.split(/[/\\]/).includes('..') || /^([/\\]|[a-z]:)/i.test(entry.name);
  if (isAstray) throw refuse(name, 'a name inside the zip', 'one that leads out of it');
  if (encrypted) throw refuse(name, 'a file without a password', 'a locked one');
  if (method !== 0 && method !== 8) throw refuse(name, 'a file stored or deflated', `method ${method}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const isThere = at + LOCAL_SIZE <= bytes.length && view.getUint32(at, true) === LOCAL;
  if (!isThere) throw refuse(name, 'a whole zip', 'nothing where the file should start');
  const from = at + LOCAL_SIZE + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (from + packed > bytes.length) throw refuse(name, 'a whole file', 'one that is cut off');
  const most = Math.min(limits.each, Math.max(SMALL, packed * limits.ratio));
  const expected = `at most ${sayBytes(most)} when unpacked`;
  if (size > most) throw refuse(name, expected, sayBytes(size));

  const raw = bytes.subarray(from, from + packed);
  const out = method === 0 ? raw.slice() : inflate(raw, name, most, expected);
  if (out.length !== size) throw refuse(name, `${size} bytes, as the zip's list says`, `${out.length} bytes`);
  if (crc32(out) !== crc) throw refuse(name, 'a file as it was packed', 'one that was damaged since');
  return out;
}

function inflate(raw: Uint8Array, name: string, most: number, expected: string): Uint8Array {
  const pieces: Uint8Array[] = [];
  let length = 0;
  let isOver = false;
  const stream = new Inflate((piece) => {
    length += piece.length;
    if (length > most) isOver = true;
    else pieces.push(piece);
  });
  try {
    for (let k = 0; k < raw.length && !isOver; k += STEP)
      stream.push(raw.subarray(k, k + STEP), k + STEP >= raw.length);
  } catch {
    throw refuse(name, 'a file that can be unpacked', 'damaged data');
  }
  if (isOver) throw refuse(name, expected, 'more than its header says');
  const out = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    out.set(piece, at);
    at += piece.length;
  }
  return out;
}

/** APPNOTE 4.4.7: the usual CRC-32, polynomial 0xEDB88320 read backwards. */
const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (let k = 0; k < bytes.length; k++) crc = (crc >>> 8) ^ (table[(crc ^ (bytes[k] ?? 0)) & 0xff] ?? 0);
  return ~crc >>> 0;
}
