import fc from 'fast-check';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { slugOf } from '../../../src/ui/author/files.ts';
import { packText, unpackText } from '../../../src/ui/author/pack.ts';

test('text comes back from a link as it was', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(unpackText(packText(text))).toBe(text);
      expect(packText(text)).toMatch(/^[\w-]*$/);
    }),
  );
});

test('a damaged link is told, and one that unpacks to far too much is not unpacked', () => {
  expect(unpackText('!!')).toEqual({ problem: 'The link is damaged: copy it again, whole.' });
  expect(unpackText(packText('hello').slice(0, -4))).toHaveProperty('problem');
  expect(unpackText('a'.repeat(40_000))).toEqual({ problem: 'The link is too long.' });
  // A megabyte of nothing packs to about a kilobyte.
  const bomb = Buffer.from(zlibSync(new Uint8Array(1 << 20), { level: 9 })).toString('base64url');
  expect(bomb.length).toBeLessThan(2000);
  expect(unpackText(bomb)).toEqual({ problem: 'The link holds too much.' });
});

test('a name for files comes out of any title', () => {
  expect(slugOf('  Grüne Häuser: 2 Zonen!  ')).toBe('grune-hauser-2-zonen');
  fc.assert(
    fc.property(fc.string(), (title) => {
      expect(slugOf(title)).toMatch(/^([a-z][a-z0-9]*(-[a-z0-9]+)*)?$/);
    }),
  );
});
