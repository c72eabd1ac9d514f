import { describe, expect, test } from 'vitest';
import { evaluate, partWorks } from '../../../src/engine/circuit/plain.ts';
import { bitsOf } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { voltFreeBoiler } from '../../../src/engine/parts/volt-free-boiler.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';
import { placeOf, travel } from '../support/places.ts';

const kind = 'volt-free-boiler';
const system = onASpur(kind, 'temperature-sensor');
const part = system.parts.findIndex(({ id }) => id === kind);
const on = { supply: 'on' };
const fed: Wire[] = [
  ['fused-spur/L', `${kind}/L`],
  ['fused-spur/N', `${kind}/N`],
];
const sensor: Wire[] = [
  [`${kind}/OS1`, 'temperature-sensor/S1'],
  [`${kind}/OS2`, 'temperature-sensor/S2'],
];
const asked: Wire = [`${kind}/RT1`, `${kind}/RT2`];
const found = placeOf(system, { [kind]: 'sensor found' });
const heats = (wires: readonly Wire[], settings: Readonly<Record<string, string>>, place: number) =>
  partWorks(system, evaluate(system, wires, { inputs: bitsOf(system, settings), place }), part);

describe('the boiler with volt-free terminals', () => {
  // Common practice: the boiler feeds the pair itself, and a contact that joins the two ends is the call.
  test('it heats while its pair is joined, without any mains on it', () => {
    expect(heats([...fed, ...sensor, asked], on, found)).toBe(true);
    expect(heats([...fed, ...sensor], on, found)).toBe(false);
  });

  test('a live on one side of the pair is no call', () => {
    expect(heats([...fed, ...sensor, ['fused-spur/L', `${kind}/RT1`]], on, found)).toBe(false);
  });

  test('without its supply it does nothing, though the pair is joined', () => {
    expect(heats([...fed, ...sensor, asked], {}, found)).toBe(false);
  });

  // Assumption, named in the part's file.
  test('it heats only once it has found its outdoor sensor', () => {
    expect(travel(system, [...fed, asked], on, 0, kind)).toEqual(['looking for its sensor']);
    expect(heats([...fed, asked], on, 0)).toBe(false);
    expect(travel(system, [...fed, ...sensor], on, 0, kind)).toEqual([
      'looking for its sensor',
      'sensor found',
    ]);
  });

  // Assumption, named in the part's file.
  test('a sensor once found is not missed until the supply has been off', () => {
    expect(travel(system, fed, on, found, kind)).toEqual(['sensor found']);
    expect(travel(system, fed, {}, found, kind)).toEqual(['sensor found', 'looking for its sensor']);
  });

  // BS 7671:2018, 414: extra-low voltage circuits are kept from mains; the rules go by the duty of the terminals.
  test('both its pairs count as extra-low voltage, and nothing inside joins them to the mains', () => {
    const low = voltFreeBoiler.terminals.filter(({ duty }) => duty === 'extra-low').map(({ id }) => id);
    expect(low).toEqual(['RT1', 'RT2', 'OS1', 'OS2']);
    const { line } = evaluate(system, [...fed, ...sensor, asked], {
      inputs: bitsOf(system, on),
      place: found,
    });
    expect(low.filter((id) => line[system.nodeOf.get(`${kind}/${id}`) ?? -1])).toEqual([]);
  });

  // Assumption, named in the part's file: 150 W for electronics, fan and pump together.
  test('it draws about 150 watts with its pump', () => {
    expect(wattsOf(kind, 'electronics')).toBeCloseTo(150, 0);
  });
});
