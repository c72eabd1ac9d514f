import { describe, expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { wirelessReceiver } from '../../../src/engine/parts/wireless-receiver.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('wireless-receiver');
const supply: Wire[] = [
  ['fused-spur/L', 'wireless-receiver/L'],
  ['fused-spur/N', 'wireless-receiver/N'],
];
const link: Wire = ['wireless-receiver/L', 'wireless-receiver/COM'];
const live = (call: string, wires: Wire[]) => {
  const { isLive } = look(system, wires, { supply: 'on', call }, 0);
  return ['ON', 'OFF'].filter((id) => isLive(`wireless-receiver/${id}`));
};

describe('the wireless receiver', () => {
  // Common practice: the contact is volt-free, so a mains system needs a feed to COM.
  test('has dead outputs while nothing is on COM, though it has its supply', () => {
    expect([...live('calling', supply), ...live('satisfied', supply)]).toEqual([]);
  });

  test('with COM fed, ON is live while the thermostat calls and OFF while it does not', () => {
    expect(live('calling', [...supply, link])).toEqual(['ON']);
    expect(live('satisfied', [...supply, link])).toEqual(['OFF']);
  });

  test('needs line and neutral at all times', () => {
    expect(wirelessReceiver.permanentLine).toEqual(['L']);
    expect(look(system, supply, { supply: 'on' }, 0).works('wireless-receiver', 'electronics')).toBe(true);
    expect(look(system, [], { supply: 'on' }, 0).works('wireless-receiver', 'electronics')).toBe(false);
  });

  // Assumption, named in the part's file.
  test('draws 2 W', () => {
    expect(wattsOf('wireless-receiver', 'electronics')).toBeCloseTo(2, 2);
  });
});
