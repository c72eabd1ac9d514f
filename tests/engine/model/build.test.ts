import { describe, expect, test } from 'vitest';
import { buildSystem } from '../../../src/engine/model/build.ts';
import { bitsOf, holds, settingsOf } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { system } from '../support/flagship.ts';

// Contract: the table of parts and terminals of the job.
const contract: Record<string, string> = {
  spur: 'L N E',
  programmer: 'L N HW-ON HW-OFF CH-ON CH-OFF',
  'room-stat': 'COM CALL SAT N',
  'cyl-stat': 'COM CALL SAT',
  'cut-out': 'IN OUT',
  'three-port': 'white grey orange blue earth',
  'two-port': 'brown blue grey orange earth',
  pump: 'L N E',
  boiler: 'L SL N E',
  strip: '1 2 3 4 5 6 7 8 9 10 11 12',
};

describe('a system made ready', () => {
  test('the job has exactly the terminals of the contract', () => {
    const wanted = Object.entries(contract).flatMap(([part, ids]) =>
      ids.split(' ').map((id) => `${part}/${id}`),
    );
    expect(system.nodes.slice(0, system.terminals).toSorted()).toEqual(wanted.toSorted());
  });

  test('the job has six inputs of two settings and nine places of its valves', () => {
    expect(system.inputs.map(({ id, settings }) => [id, ...settings])).toEqual([
      ['supply', 'off', 'on'],
      ['hot-water', 'off', 'on'],
      ['heating', 'off', 'on'],
      ['room', 'satisfied', 'calling'],
      ['cylinder', 'satisfied', 'calling'],
      ['cut-out', 'healthy', 'tripped'],
    ]);
    expect(system.places).toBe(9);
  });

  test('settings as bits and settings by name say the same', () => {
    for (let bits = 0; bits < 64; bits++) {
      expect(bitsOf(system, settingsOf(system, bits))).toBe(bits);
      expect(holds(system, bits, settingsOf(system, bits))).toBe(true);
      expect(holds(system, bits ^ 1, settingsOf(system, bits))).toBe(false);
    }
  });

  const spec = { ...system.spec, id: 'bad' };
  test('an unknown kind of part is named', () => {
    const parts = { ...spec.parts, extra: { kind: 'kettle', name: 'Kettle' } };
    expect(() => buildSystem({ ...spec, parts }, findKind)).toThrow('part "extra": unknown kind "kettle"');
  });

  test('an input that no part uses is named', () => {
    const inputs = { ...spec.inputs, frost: { label: 'Frost' } };
    expect(() => buildSystem({ ...spec, inputs }, findKind)).toThrow('input "frost": no part uses it');
  });

  test('an input that a part needs and the system lacks is named', () => {
    const { room: _, ...inputs } = spec.inputs;
    expect(() => buildSystem({ ...spec, inputs }, findKind)).toThrow('part "room-stat": input "room"');
  });

  test('a system without a supply is refused', () => {
    const { spur: _, ...parts } = spec.parts;
    const { supply: __, ...inputs } = spec.inputs;
    expect(() => buildSystem({ ...spec, parts, inputs }, findKind)).toThrow('no part supplies the system');
  });
});
