import { expect, test } from 'vitest';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { SystemPart } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { checkCores } from '../../../src/engine/rules/cores.ts';
import { system } from '../support/flagship.ts';
import { must } from '../support/must.ts';

/*
 * BS 7671:2018, 514.3 and 514.4: blue is neutral, green and yellow is earth and nothing else, and a core of another
 * colour used as line is marked at both ends.
 */

const with_ = (part: string, more: Partial<SystemPart>) => {
  const { spec } = system;
  const parts = { ...spec.parts, [part]: { ...must(spec.parts[part]), ...more } };
  return checkCores(buildSystem({ ...spec, parts }, findKind));
};

test('the usual cores tell the truth', () => {
  expect(checkCores(system)).toEqual([]);
});

test('a blue core used as a switched line needs a brown sleeve at both ends', () => {
  const bare = with_('cyl-stat', { cores: { CALL: 'blue' } });
  expect(bare.map(({ part, terminal }) => `${part}/${terminal}`)).toEqual(['cyl-stat/CALL']);
  expect(must(bare[0]).says).toContain('brown sleeve');
  expect(with_('cyl-stat', { cores: { CALL: 'blue' }, sleeved: ['CALL'] })).toEqual([]);
});

test('a green and yellow core is never anything but the earth, sleeved or not', () => {
  const sleeved = with_('cyl-stat', { cores: { SAT: 'green-yellow' }, sleeved: ['SAT'] });
  expect(sleeved.map(({ says }) => says)).toEqual(['a green and yellow core that is not the earth']);
});

test('an earth is in green and yellow', () => {
  expect(with_('pump', { cores: { E: 'black' } }).map(({ says }) => says)).toEqual([
    'an earth in a black core',
  ]);
});
