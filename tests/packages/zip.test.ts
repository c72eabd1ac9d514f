import { unzipSync } from 'fflate';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { zipOf } from '../../tools/package/zip.ts';

const text = (bytes: Uint8Array | undefined) => bytes && Buffer.from(bytes).toString();
const files = (...names: string[]) => new Map(names.map((name) => [name, Buffer.from(`this is ${name}`)]));

/** Names in the order in which the central directory lists them (APPNOTE.TXT, section 4.3.12). */
function listed(zip: Uint8Array): string[] {
  const bytes = Buffer.from(zip);
  const names: string[] = [];
  for (let at = bytes.indexOf('PK\x01\x02'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 46))
    names.push(bytes.toString('utf8', at + 46, at + 46 + bytes.readUInt16LE(at + 28)));
  return names;
}

afterEach(() => vi.unstubAllEnvs());

describe('a zip', () => {
  it('holds the files, the manifest first and the rest in order', () => {
    const zip = zipOf(files('b/x.js', 'manifest.xml', 'Z.html', 'a.woff2'), 'manifest.xml');
    expect(listed(zip)).toEqual(['manifest.xml', 'Z.html', 'a.woff2', 'b/x.js']);
    expect(text(unzipSync(zip)['b/x.js'])).toBe('this is b/x.js');
  });

  it('is the same bytes whatever order the files come in, wherever and whenever it is made', () => {
    const once = zipOf(files('a', 'b', 'c'));
    vi.stubEnv('TZ', 'Pacific/Kiritimati');
    vi.useFakeTimers({ now: new Date('2031-07-01T12:00:00Z') });
    const again = zipOf(files('c', 'a', 'b'));
    vi.useRealTimers();
    expect(Buffer.from(again).equals(Buffer.from(once))).toBe(true);
  });

  it.each(['../up', 'a//b', '/root', ''])('refuses the path “%s”', (name) => {
    expect(() => zipOf(files(name))).toThrow(/expected the path of a file/);
  });
});
