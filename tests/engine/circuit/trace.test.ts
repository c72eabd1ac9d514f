import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { partsOn, routeBetween, terminalsOf, whereItStops } from '../../../src/engine/circuit/trace.ts';
import { bitsOf } from '../../../src/engine/model/system.ts';
import { rewired, right, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { placeOf } from '../support/places.ts';

const node = (name: string) => must(system.nodeOf.get(name), name);
const calling = { supply: 'on', 'hot-water': 'on', cylinder: 'calling' };
const config = (settings: Record<string, string>, positions = {}) => ({
  inputs: bitsOf(system, settings),
  place: placeOf(system, positions),
});

describe('the path that carries a voltage', () => {
  test('it runs from the supply through every terminal and contact on the way to the motor', () => {
    const route = must(
      routeBetween(system, right, config(calling), system.supply.line, node('two-port/brown')),
    );
    expect(partsOn(system, route)).toEqual([
      'spur',
      'strip',
      'programmer',
      'cyl-stat',
      'cut-out',
      'two-port',
    ]);
    expect(terminalsOf(system, route).slice(0, 3)).toEqual(['spur/L', 'strip/1', 'programmer/L']);
  });

  test('there is none to a terminal that is dead', () => {
    const tripped = config({ ...calling, 'cut-out': 'tripped' });
    expect(routeBetween(system, right, tripped, system.supply.line, node('two-port/brown'))).toBeUndefined();
  });
});

describe('the place where a voltage stops', () => {
  const stop = (wires: typeof right, settings: Record<string, string>, target: string) => {
    const at = config(settings);
    const { line } = evaluate(system, wires, at);
    return { line, ...whereItStops(system, wires, at, node(target), line) };
  };

  test('a tripped cut-out stops it between its two terminals', () => {
    const { route, contact } = stop(right, { ...calling, 'cut-out': 'tripped' }, 'two-port/brown');
    expect(terminalsOf(system, route)[0]).toBe('cut-out/IN');
    expect(must(system.contacts[must(contact)]).spec.id).toBe('cut-out');
  });

  test('it begins at a live node, and all after it is dead', () => {
    const { line, route } = stop(right, { supply: 'on' }, 'boiler/SL');
    expect(route.map((n) => line[n])).toEqual([true, ...route.slice(1).map(() => false)]);
  });

  test('where a wire is missing it names the dead terminal alone', () => {
    const wires = rewired(right, [['boiler/SL', 'strip/8']]);
    expect(stop(wires, calling, 'boiler/SL')).toMatchObject({
      route: [node('boiler/SL')],
      contact: undefined,
    });
  });
});
