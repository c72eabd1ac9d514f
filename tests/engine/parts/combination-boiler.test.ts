import { describe, expect, test } from 'vitest';
import { evaluate, partWorks } from '../../../src/engine/circuit/plain.ts';
import { bitsOf } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { combinationBoiler } from '../../../src/engine/parts/combination-boiler.ts';
import { onASpur, wattsOf } from '../support/on-a-spur.ts';

const kind = 'combination-boiler';
const system = onASpur(kind);
const part = system.parts.findIndex(({ id }) => id === kind);
const fed: Wire[] = [
  ['fused-spur/L', `${kind}/L`],
  ['fused-spur/N', `${kind}/N`],
];
const asked: Wire = ['fused-spur/L', `${kind}/SL`];
const heats = (wires: readonly Wire[]) =>
  partWorks(system, evaluate(system, wires, { inputs: bitsOf(system, { supply: 'on' }), place: 0 }), part);

// Common practice: a switched line asks it to heat the rooms, its pump is inside, and hot water needs no wire.
describe('the combination boiler', () => {
  test('it heats the rooms when its switched line is live, and not otherwise', () => {
    expect(heats([...fed, asked])).toBe(true);
    expect(heats(fed)).toBe(false);
  });

  test('the link it leaves the factory with, from L to SL, makes it heat without a call', () => {
    expect(heats([...fed, [`${kind}/L`, `${kind}/SL`]])).toBe(true);
  });

  test('a live on its switched line alone does nothing', () => {
    expect(heats([['fused-spur/N', `${kind}/N`], asked])).toBe(false);
    expect(heats([['fused-spur/L', `${kind}/L`], asked])).toBe(false);
  });

  test('it hands no live out: with its pump inside it has no terminal for one', () => {
    expect(combinationBoiler.terminals.map(({ id }) => id)).toEqual(['L', 'SL', 'N', 'E']);
    expect(combinationBoiler.contacts ?? []).toEqual([]);
  });

  // Assumption, named in the part's file: 150 W for electronics, fan and pump together.
  test('it draws about 150 watts with its pump', () => {
    expect(wattsOf(kind, 'electronics')).toBeCloseTo(150, 0);
  });
});
