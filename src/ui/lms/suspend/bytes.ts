import { seedOf } from '../../../course/random.ts';

/** Collects numbers as bytes. */
export interface Writer {
  readonly bytes: number[];
  /** A whole number in so many bytes, the highest first; what does not fit is cut to the most that does. */
  readonly put: (value: number, size: number) => void;
  /** A whole number in as many bytes as it needs, seven bits to a byte. */
  readonly putAny: (value: number) => void;
}

export function makeWriter(): Writer {
  const bytes: number[] = [];
  return {
    bytes,
    put: (value, size) => {
      const fit = Math.min(Math.max(0, Math.floor(value)), 256 ** size - 1);
      for (let k = size - 1; k >= 0; k--) bytes.push(Math.floor(fit / 256 ** k) % 256);
    },
    putAny: (value) => {
      let left = Math.min(Math.max(0, Math.floor(value)), Number.MAX_SAFE_INTEGER);
      for (; left > 127; left = Math.floor(left / 128)) bytes.push((left % 128) | 128);
      bytes.push(left);
    },
  };
}

/** Reads them back. Past the end it throws a RangeError. */
export interface Reader {
  readonly left: () => number;
  readonly take: (size: number) => number;
  readonly takeAny: () => number;
  readonly rest: () => Uint8Array;
}

export function makeReader(bytes: Uint8Array): Reader {
  let at = 0;
  const next = (): number => {
    const byte = bytes[at++];
    if (byte === undefined) throw new RangeError('expected more bytes');
    return byte;
  };
  return {
    left: () => bytes.length - at,
    take: (size) => {
      let value = 0;
      for (let k = 0; k < size; k++) value = value * 256 + next();
      return value;
    },
    takeAny: () => {
      let value = 0;
      for (let unit = 1; ; unit *= 128) {
        const byte = next();
        value += (byte % 128) * unit;
        if (byte < 128) return value;
        if (unit > 2 ** 49) throw new RangeError('expected a smaller number');
      }
    },
    rest: () => bytes.subarray(at),
  };
}

/** Of three bytes: tells names apart in less room than they take. */
export const hashOf = (name: string): number => seedOf(name) % 0x1000000;

/** Names by their hash; those that share one with another are left out, for nobody could tell them apart. */
export function byHash(names: Iterable<string>): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  const shared = new Set<number>();
  for (const name of new Set(names)) {
    const hash = hashOf(name);
    if (found.has(hash)) shared.add(hash);
    found.set(hash, name);
  }
  for (const hash of shared) found.delete(hash);
  return found;
}

/** How many bytes fit into so many characters, version and check counted off. */
export const roomFor = (characters: number): number => Math.floor((characters * 3) / 4) - HEAD;

const VERSION = 1;
/** Version, and two bytes to tell damage by: a platform may cut what it keeps. */
const HEAD = 3;

const checkOf = (bytes: readonly number[] | Uint8Array): number => {
  let hash = 0x811c9dc5;
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193);
  return ((hash >>> 16) ^ hash) & 0xffff;
};

/** Bytes as text that every platform keeps as it is: base64url. */
export function toText(bytes: readonly number[]): string {
  const check = checkOf(bytes);
  const all = [VERSION, check >> 8, check & 0xff, ...bytes];
  let raw = '';
  for (const byte of all) raw += String.fromCharCode(byte);
  return btoa(raw).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes of a text; undefined when it is damaged, or another version's. */
export function fromText(text: string): Uint8Array | undefined {
  let raw: string;
  try {
    raw = atob(text.trim().replaceAll('-', '+').replaceAll('_', '/'));
  } catch {
    return undefined;
  }
  const all = Uint8Array.from(raw, (letter) => letter.charCodeAt(0));
  const bytes = all.subarray(HEAD);
  if (all.length < HEAD || all[0] !== VERSION) return undefined;
  return (all[1] ?? 0) * 256 + (all[2] ?? 0) === checkOf(bytes) ? bytes : undefined;
}
