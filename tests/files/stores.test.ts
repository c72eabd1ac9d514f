import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FileError } from '../../src/files/error.ts';
import { parseSystem } from '../../src/files/system.ts';

const real = readFileSync(new URL('../../content/systems/unvented-three-port.yaml', import.meta.url), 'utf8');

/** What the parser says of the file with one piece of it changed. */
function messageOf(change: string, to: string): string {
  expect(real).toContain(change);
  try {
    parseSystem(real.replace(change, to), 'x.yaml');
  } catch (error) {
    if (error instanceof FileError) return error.message;
    throw error;
  }
  return 'sound';
}

test('a system file says what its store is', () => {
  const { spec } = parseSystem(real, 'x.yaml');
  expect(spec.stores).toEqual([
    {
      id: 'cylinder',
      says: 'cylinder',
      unvented: true,
      litres: 210,
      refill: 'automatic',
      heatSources: [{ part: 'coil', thermostat: 'cylinder', cutOuts: ['cut-out'] }],
      relief: ['temperature and pressure', 'expansion'],
    },
  ]);
});

test.each([
  [
    'a part that is not there',
    '{ part: coil,',
    '{ part: coill,',
    'stores[0].heatSources[0].part: ',
    '"coil"',
  ],
  [
    'a thermostat that nobody has',
    'thermostat: cylinder',
    'thermostat: cylindre',
    'stores[0].heatSources[0].thermostat: ',
    'did you mean "cylinder"?',
  ],
  [
    'a cut-out that nobody has',
    'cutOuts: [cut-out]',
    'cutOuts: [cut-outs]',
    'stores[0].heatSources[0].cutOuts[0]: ',
    'did you mean "cut-out"?',
  ],
  [
    'a key misspelt',
    'cutOuts: [cut-out]',
    'cutOut: [cut-out]',
    'stores[0].heatSources[0]: ',
    'did you mean "cutOuts"?',
  ],
  ['no litres', 'litres: 210', 'litres: 0', 'stores[0].litres: ', 'more than 0'],
  [
    'a refill nobody knows',
    'refill: automatic',
    'refill: by hand',
    'stores[0].refill: ',
    'automatic or none',
  ],
  [
    'a valve nobody knows',
    '[temperature and pressure, expansion]',
    '[pressure]',
    'stores[0].relief[0]: ',
    'temperature and pressure or expansion',
  ],
  [
    'neither vented nor unvented',
    'unvented: true',
    'unvented: maybe',
    'stores[0].unvented: ',
    'true or false',
  ],
])('a slip in a store is named with its place: %s', (_, change, to, place, words) => {
  const message = messageOf(change, to);
  expect(message.startsWith(`x.yaml: ${place}`)).toBe(true);
  expect(message).toContain(words);
});
