import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('two-channel-receiver');
const supply: Wire[] = [
  ['fused-spur/L', 'two-channel-receiver/L'],
  ['fused-spur/N', 'two-channel-receiver/N'],
];
const feed = (n: 1 | 2): Wire => ['two-channel-receiver/L', `two-channel-receiver/COM${n}`];
const live = (water: string, heating: string, ...links: Wire[]) => {
  const settings = { supply: 'on', 'hot-water': water, heating };
  const { isLive } = look(system, [...supply, ...links], settings, 0);
  return ['ON1', 'OFF1', 'ON2', 'OFF2'].filter((id) => isLive(`two-channel-receiver/${id}`));
};

describe('the two-channel receiver', () => {
  // Common practice: unlike a programmer it has no link from its line to its contacts.
  test('has four dead outputs without links, whatever is switched on', () => {
    expect([...live('on', 'on'), ...live('off', 'off')]).toEqual([]);
  });

  // A three-port needs the OFF of hot water for its grey, so each channel must be a changeover.
  test.each([
    ['on', 'on', ['ON1', 'ON2']],
    ['on', 'off', ['ON1', 'OFF2']],
    ['off', 'on', ['OFF1', 'ON2']],
    ['off', 'off', ['OFF1', 'OFF2']],
  ])('with both links, hot water %s and heating %s make exactly %j live', (water, heating, outputs) => {
    expect(live(water, heating, feed(1), feed(2))).toEqual(outputs);
  });

  test('a link to one common leaves the other channel dead', () => {
    expect(live('on', 'on', feed(1))).toEqual(['ON1']);
    expect(live('on', 'on', feed(2))).toEqual(['ON2']);
  });

  // Assumption, named in the part's file.
  test('draws 2 W', () => {
    expect(wattsOf('two-channel-receiver', 'electronics')).toBeCloseTo(2, 2);
  });
});
