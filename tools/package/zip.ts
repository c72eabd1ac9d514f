import { type Zippable, zipSync } from 'fflate';

/**
 * Every entry has this date, the first that a zip can hold: bytes tell what is inside, never when it was packed. A zip
 * keeps local time, so it is made where it is used.
 */
const date = (): Date => new Date(1980, 0, 1);

/** Packed already: packing it again would cost time and gain nothing. */
const PACKED = /\.(?:woff2|png|zip)$/;

/**
 * A zip of files, the same bytes for the same files on every machine: entries in order of name, but what must come
 * first comes first, with one date and one way of packing.
 * @param files by path, with `/` and no leading slash
 * @param first the path that stands first, for readers that look no further
 * @throws RangeError when a path would lead out of the folder that it is unpacked in
 */
export function zipOf(files: ReadonlyMap<string, Uint8Array>, first?: string): Uint8Array {
  const names = [...files.keys()].sort();
  const bad = names.find((name) => name === '' || name.split('/').some((one) => one === '' || one === '..'));
  if (bad !== undefined) throw new RangeError(`expected the path of a file, found “${bad}”`);
  const order = first === undefined ? names : [first, ...names.filter((name) => name !== first)];
  const entries: Zippable = {};
  for (const name of order) {
    const bytes = files.get(name);
    if (!bytes) throw new RangeError(`expected a file ${name}, found none`);
    entries[name] = [bytes, { level: PACKED.test(name) ? 0 : 9 }];
  }
  return zipSync(entries, { mtime: date() });
}
