import fc from 'fast-check';
import { strToU8, type Zippable, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { FileError } from '../../src/files/error.ts';
import { isZip, readZip, zipLimits } from '../../src/files/zip.ts';

const limits = { ...zipLimits, packed: 300_000, files: 20, each: 50_000, all: 200_000, ratio: 100 };
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** What is said of a zip as a whole that is refused. */
function refusal(bytes: Uint8Array): string {
  try {
    readZip(bytes, 'class.zip', limits);
  } catch (error) {
    if (error instanceof FileError) return error.message;
    throw error;
  }
  return 'read';
}

/** Where a signature stands the nth time. */
function find(bytes: Uint8Array, signature: number, nth = 0): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  for (let at = 0, seen = 0; at + 4 <= bytes.length; at++)
    if (view.getUint32(at, true) === signature && seen++ === nth) return at;
  throw new Error('no such signature');
}

/** A zip with some field of its list overwritten. */
function patched(files: Zippable, change: (view: DataView, central: number) => void): Uint8Array {
  const bytes = zipSync(files);
  change(new DataView(bytes.buffer, bytes.byteOffset), find(bytes, 0x02014b50));
  return bytes;
}

test('files come out as they went in, stored or packed, with the zip in front of their names', () => {
  const many: Zippable = {
    'AB-1/week.json': strToU8('{"a":1}'.repeat(500)),
    'CD 2/wéek.json': [strToU8('plain'), { level: 0 }],
    empty: new Uint8Array(0),
  };
  const { files, troubles } = readZip(zipSync(many), 'class.zip', limits);
  expect(troubles).toEqual([]);
  expect(files.map(({ name, bytes }) => [name, text(bytes)])).toEqual([
    ['class.zip › AB-1/week.json', '{"a":1}'.repeat(500)],
    ['class.zip › CD 2/wéek.json', 'plain'],
    ['class.zip › empty', ''],
  ]);
});

test('folders and what a computer adds by itself are passed over without a word', () => {
  const zip = zipSync({
    'a/': new Uint8Array(0),
    '__MACOSX/a/._x.json': strToU8('x'),
    'a/.DS_Store': strToU8('x'),
    'a/x.json': strToU8('x'),
  });
  const { files, troubles } = readZip(zip, 'z', limits);
  expect(files.map(({ name }) => name)).toEqual(['z › a/x.json']);
  expect(troubles).toEqual([]);
});

describe('a bomb', () => {
  const bomb = { 'bomb.json': new Uint8Array(40_000_000), 'x.json': strToU8('x') };

  test('that says how big it is: named by its size, the rest is read', () => {
    const { files, troubles } = readZip(zipSync(bomb), 'z', limits);
    expect(troubles.map(({ message }) => message)).toEqual([
      'z › bomb.json: expected at most 50 kB when unpacked, found 40 MB',
    ]);
    expect(files.map(({ name }) => name)).toEqual(['z › x.json']);
  });

  test('whose header lies about its size: unpacking stops at the limit', () => {
    const lying = patched(bomb, (view, central) => view.setUint32(central + 24, 10, true));
    const { files, troubles } = readZip(lying, 'z', limits);
    expect(troubles.map(({ message }) => message)).toEqual([
      'z › bomb.json: expected at most 50 kB when unpacked, found more than its header says',
    ]);
    expect(files).toHaveLength(1);
  });

  test('of many files that are each within bounds: refused as a whole', () => {
    const many = Object.fromEntries(
      Array.from({ length: 9 }, (_, k) => [`${k}.json`, new Uint8Array(40_000)]),
    );
    expect(refusal(zipSync(many))).toMatch(/^class.zip: expected at most 200 kB when unpacked, found more/);
  });

  test('of one packed file that is listed many times over: refused as a whole', () => {
    // As of overlapping files (Fifield, "A better zip bomb", 2019): all headers point at one kernel.
    const names = Array.from({ length: 9 }, (_, k) => `${k}.json`);
    const zip = zipSync(Object.fromEntries(names.map((name) => [name, new Uint8Array(40_000)])));
    const view = new DataView(zip.buffer, zip.byteOffset);
    for (const k of names.keys()) view.setUint32(find(zip, 0x02014b50, k) + 42, 0, true);
    expect(refusal(zip)).toMatch(/expected at most 200 kB when unpacked/);
  });

  test('within the size of a file but packed too well to be text', () => {
    const tight = { ...limits, each: 2_000_000 };
    const { troubles } = readZip(zipSync({ 'b.json': new Uint8Array(1_900_000) }), 'z', tight);
    expect(troubles.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^z › b\.json: expected at most \d+ kB when unpacked, found 1\.9 MB$/),
    ]);
  });
});

test('too many files, too big a zip, a 64-bit one: refused as a whole, with the bound', () => {
  const many = Object.fromEntries(Array.from({ length: 21 }, (_, k) => [`${k}`, strToU8('x')]));
  expect(refusal(zipSync(many))).toBe('class.zip: expected a zip of at most 20 files, found one of 21');
  expect(refusal(zipSync({ a: [new Uint8Array(300_001), { level: 0 }] }))).toBe(
    'class.zip: expected a zip of at most 300 kB, found 301 kB',
  );
  const wide = zipSync({ a: strToU8('x') });
  new DataView(wide.buffer, wide.byteOffset).setUint16(find(wide, 0x06054b50) + 10, 0xffff, true);
  expect(refusal(wide)).toBe('class.zip: expected a plain zip, found one in the 64-bit form');
});

test('names that lead out, locked files and unknown ways of packing are named and left out', () => {
  const said = (bytes: Uint8Array) => readZip(bytes, 'z', limits).troubles.map(({ message }) => message);
  for (const name of ['../x.json', 'a/../../x', '/etc/x', '\\x', 'C:\\x.json', 'a\\..\\x'])
    expect(said(zipSync({ [name]: strToU8('x') }))[0]).toMatch(
      /expected a name inside the zip, found one that leads out of it$/,
    );
  const x = { x: strToU8('x') };
  expect(said(patched(x, (view, at) => view.setUint16(at + 8, 1, true)))).toEqual([
    'z › x: expected a file without a password, found a locked one',
  ]);
  expect(said(patched(x, (view, at) => view.setUint16(at + 10, 12, true)))).toEqual([
    'z › x: expected a file stored or deflated, found method 12',
  ]);
});

test('damage is told, and only the damaged file is lost', () => {
  const zip = zipSync({ 'a.json': strToU8('hello'.repeat(50)), 'b.json': strToU8('b') });
  const hurt = zip.slice();
  const from = find(hurt, 0x04034b50) + 30 + 'a.json'.length;
  for (let k = from; k < from + 4; k++) hurt[k] = (hurt[k] ?? 0) ^ 0xff;
  const { files, troubles } = readZip(hurt, 'z', limits);
  expect(files.map(({ name }) => name)).toEqual(['z › b.json']);
  expect(troubles).toHaveLength(1);
  expect(refusal(zip.slice(0, -30))).toMatch(/expected a whole zip/);
  expect(refusal(strToU8('no zip'))).toBe(
    'class.zip: expected a whole zip, found one that is cut off, or no zip',
  );
  const flipped = patched({ x: [strToU8('stored'), { level: 0 }] }, (view, at) =>
    view.setUint32(at + 16, 7, true),
  );
  expect(readZip(flipped, 'z', limits).troubles[0]?.message).toBe(
    'z › x: expected a file as it was packed, found one that was damaged since',
  );
});

test('whatever bytes are flipped or cut: a FileError or files within the bounds, and nothing else', () => {
  const sound = zipSync({
    'a.json': strToU8('{"x":[1,2,3]}'.repeat(90)),
    'b/c.json': strToU8('y'.repeat(300)),
  });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { maxLength: 12 }),
      fc.nat(sound.length),
      fc.boolean(),
      (flips, cut, isCut) => {
        const bytes = sound.slice(0, isCut ? cut : undefined);
        for (const [at, value] of flips) if (at < bytes.length) bytes[at] = value;
        try {
          const { files } = readZip(bytes, 'z', limits);
          for (const one of files) expect(one.bytes.length).toBeLessThanOrEqual(limits.each);
        } catch (error) {
          expect(error).toBeInstanceOf(FileError);
        }
      },
    ),
    { numRuns: 2000 },
  );
});

test('a zip is told by how it begins', () => {
  expect([zipSync({ a: strToU8('x') }), zipSync({}), strToU8('PK'), strToU8('{}')].map(isZip)).toEqual([
    true,
    true,
    false,
    false,
  ]);
});
