import { expect, test } from 'vitest';
import { readHash, sittingHash } from '../../../src/ui/coursework/address.ts';

test('The address of a sitting and of a slot in it come back as they went', () => {
  expect(readHash(sittingHash('unvented-week AB-12'))).toEqual({
    kind: 'sitting',
    id: 'unvented-week AB-12',
  });
  expect(readHash(sittingHash('a B1', 'valves/2'))).toEqual({
    kind: 'sitting',
    id: 'a B1',
    slot: 'valves/2',
  });
  // People read addresses: no percent signs where none are needed.
  expect(sittingHash('a B1', 'valves/2')).toBe('#sitting=a+B1&slot=valves/2');
});

test('A link with a coursework wins over all else, and is handed on whole', () => {
  const hash = '#c=AX2S&code=AB12&name=Sam+Lee&sitting=x';
  expect(readHash(hash)).toEqual({ kind: 'link', hash });
  expect(readHash(`${hash}&slot=wire/1`)).toEqual({
    kind: 'link',
    hash: `${hash}&slot=wire/1`,
    slot: 'wire/1',
  });
});

test('What names nothing is the beginning', () => {
  for (const hash of ['', '#', '#main', '#sitting=', '#slot=a/1'])
    expect(readHash(hash)).toEqual({ kind: 'start' });
  expect(readHash('#sample=unvented-week')).toEqual({ kind: 'sample', id: 'unvented-week' });
});
