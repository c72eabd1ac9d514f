import { expect, test } from 'vitest';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { programmableThermostat } from '../../../src/engine/parts/programmable-thermostat.ts';
import { onASpur } from '../support/on-a-spur.ts';
import { look } from '../support/places.ts';

const system = onASpur('programmable-thermostat');
const ends = ['programmable-thermostat/CALL', 'programmable-thermostat/SAT'];
const live = (call: string, wires: Wire[]) => {
  const { isLive } = look(system, wires, { supply: 'on', call }, 0);
  return ends.filter(isLive);
};

// Common practice: one changeover, as in a wired room thermostat.
test('a programmable thermostat joins COM to CALL or to SAT, never to both', () => {
  const feed: Wire[] = [['fused-spur/L', 'programmable-thermostat/COM']];
  expect(live('calling', feed)).toEqual(['programmable-thermostat/CALL']);
  expect(live('satisfied', feed)).toEqual(['programmable-thermostat/SAT']);
});

test('its battery feeds nothing outside: with nothing on COM no terminal is ever live', () => {
  expect([...live('calling', []), ...live('satisfied', [])]).toEqual([]);
});

test('it needs no neutral and draws nothing from the mains', () => {
  expect(programmableThermostat.terminals.map(({ duty }) => duty)).not.toContain('neutral');
  expect(programmableThermostat.loads ?? []).toEqual([]);
});
