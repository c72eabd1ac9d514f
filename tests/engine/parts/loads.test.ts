import { describe, expect, test } from 'vitest';
import { atWork, evaluate } from '../../../src/engine/circuit/plain.ts';
import { bitsOf } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { strip } from '../../../src/engine/parts/strip.ts';
import { system } from '../support/flagship.ts';
import { look } from '../support/places.ts';

const on = { supply: 'on' };
const works = (does: 'fires' | 'pumps', wires: Wire[]): boolean =>
  atWork(system, evaluate(system, wires, { inputs: bitsOf(system, on), place: 0 }), does);

describe('loads', () => {
  // Common practice: the electronics need the permanent line, the switched line only asks.
  test('the boiler fires only with permanent line, switched line and neutral', () => {
    const all: Wire[] = [
      ['spur/L', 'boiler/L'],
      ['spur/L', 'boiler/SL'],
      ['spur/N', 'boiler/N'],
    ];
    expect(works('fires', all)).toBe(true);
    for (const missing of all)
      expect(
        works(
          'fires',
          all.filter((wire) => wire !== missing),
        ),
      ).toBe(false);
  });

  test('the pump runs between line and neutral, either way round', () => {
    expect(
      works('pumps', [
        ['spur/L', 'pump/L'],
        ['spur/N', 'pump/N'],
      ]),
    ).toBe(true);
    expect(
      works('pumps', [
        ['spur/N', 'pump/L'],
        ['spur/L', 'pump/N'],
      ]),
    ).toBe(true);
  });

  // Contract: one side joined to line and the other to neutral, through wires and closed contacts alone.
  test('a load does not work between line and earth', () => {
    expect(
      works('pumps', [
        ['spur/L', 'pump/L'],
        ['spur/E', 'pump/N'],
      ]),
    ).toBe(false);
  });

  test('two loads in a row do not work through each other', () => {
    const wires: Wire[] = [
      ['spur/L', 'pump/L'],
      ['pump/N', 'boiler/SL'],
      ['spur/N', 'boiler/N'],
      ['spur/L', 'boiler/L'],
    ];
    expect(works('pumps', wires)).toBe(false);
    expect(works('fires', wires)).toBe(false);
  });

  // Common practice: the accelerator lies between call and neutral.
  test('the heater of the room thermostat warms only while the room calls', () => {
    const wires: Wire[] = [
      ['spur/L', 'room-stat/COM'],
      ['spur/N', 'room-stat/N'],
    ];
    expect(look(system, wires, { ...on, room: 'calling' }, 0).works('room-stat', 'accelerator')).toBe(true);
    expect(look(system, wires, on, 0).works('room-stat', 'accelerator')).toBe(false);
  });
});

describe('the terminal strip', () => {
  test('it has twelve ways unless the system says otherwise, and joins nothing by itself', () => {
    expect(strip({}).terminals.map(({ id }) => id)).toEqual([...'123456789', '10', '11', '12']);
    expect(strip({ ways: 4 }).terminals).toHaveLength(4);
    expect(strip({}).contacts ?? []).toEqual([]);
  });
});
