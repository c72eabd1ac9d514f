import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type CalloutAddress,
  calloutPath,
  readCallout,
  writeCallout,
} from '../../../src/course/callouts/address.ts';
import { levelIn } from '../../../src/course/progress/difficulty.ts';

const id = fc.stringMatching(/^[a-z][a-z0-9]{0,5}(-[a-z0-9]{1,5}){0,3}$/);
const addresses: fc.Arbitrary<CalloutAddress> = fc.oneof(
  fc.record({ kind: fc.constant('authored' as const), id }),
  fc.record({
    kind: fc.constant('made' as const),
    system: id,
    seed: fc.nat({ max: 2 ** 32 - 1 }),
    level: fc.constantFrom(1 as const, 2 as const, 3 as const),
  }),
);

test('An address written and read again is the same callout, and a made one tells its level', () => {
  fc.assert(
    fc.property(addresses, (address) => {
      expect(readCallout(writeCallout(address))).toEqual(address);
      expect(levelIn(writeCallout(address))).toBe(address.kind === 'made' ? address.level : undefined);
    }),
  );
});

test.each([
  '',
  'callout/',
  'callout/three-port/1',
  'callout/three-port/1/4',
  'callout/three-port/4294967296/1',
  'callout/three-port/-1/1',
  'callout/Three-Port/1/1',
  'callout/three-port/1/1/',
  'path-order/three-port/1/1',
])('“%s” is no address of a callout', (text) => {
  expect(readCallout(text)).toBeUndefined();
});

test('An authored callout has a page of its own, and a made one is shown by the page of visits', () => {
  expect(calloutPath({ kind: 'authored', id: 'cold-feet' })).toBe('/callouts/cold-feet/');
  expect(calloutPath({ kind: 'made', system: 'three-port', seed: 7, level: 2 })).toBe(
    '/callouts/visit/#callout/three-port/7/2',
  );
});
