import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allFailures, compatible, type Failure, failureId } from '../../../src/engine/faults/failure.ts';
import type { Hazard } from '../../../src/engine/faults/hazard.ts';
import { hazards } from '../../../src/engine/faults/hazards/index.ts';
import { type FailureSet, findLayers, layersOf, type Progress } from '../../../src/engine/faults/layers.ts';
import type { System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { twoTwoPorts, twoTwoPortsRight } from '../../fixtures/two-two-ports.ts';
import { mistake, references, right, system } from '../support/flagship.ts';
import { must } from '../support/must.ts';
import { seed, wirings } from '../support/random.ts';
import { plainSearch } from './plain-search.ts';

/** Sets of `size` failures that can be there at once, the same on every run. */
function someSets(failures: readonly Failure[], size: number, count: number): Failure[][] {
  const pick = fc.uniqueArray(fc.constantFrom(...failures), { minLength: size, maxLength: size });
  return fc
    .sample(pick, { seed, numRuns: 2 * count })
    .filter((set) => set.every((a, k) => set.slice(k + 1).every((b) => compatible(a, b))))
    .slice(0, count);
}

/** Whether a set is among those found; nothing when a smaller one in it is: a further failure may well undo the harm. */
function told(found: readonly FailureSet[], set: readonly Failure[]): boolean | undefined {
  const within = found.filter(({ failures }) => failures.every((failure) => set.includes(failure)));
  if (within.some(({ failures }) => failures.length < set.length)) return undefined;
  return within.length > 0;
}

/**
 * All single failures, some larger sets, and every set found with all that it is made of: both searches must agree.
 * @param some how many sets of each size above 1
 */
function compare(of: System, wires: readonly Wire[], hazard: Hazard, some: number, most = 2) {
  const strikes = plainSearch(of, wires, hazard);
  const failures = allFailures(of, wires);
  const found = layersOf(of, wires, hazard, most).map((set) => ({
    ...set,
    // The same objects as in `failures`, so that sets can be told apart by identity.
    failures: set.failures.map((failure) =>
      must(
        failures.find((one) =>
          'wire' in one || 'wire' in failure
            ? 'wire' in one && 'wire' in failure && one.wire === failure.wire
            : one.part === failure.part && one.spec === failure.spec,
        ),
      ),
    ),
  }));
  const tried = [[], ...failures.map((one) => [one])];
  for (let size = 2; size <= most; size++) tried.push(...someSets(failures, size, some));
  for (const set of tried) {
    const fast = told(found, set);
    if (fast !== undefined) expect([hazard.id, set, fast]).toEqual([hazard.id, set, strikes(set)]);
  }
  for (const { failures: set } of found) {
    expect(strikes(set)).toBe(true);
    // What is left when any one of them is taken away is not enough.
    for (const one of set) expect(strikes(set.filter((other) => other !== one))).toBe(false);
  }
  return found;
}

describe('the search for layers agrees with a plain one, failure by failure', { timeout: 120_000 }, () => {
  test.each(hazards)('on the right wiring: $title', (hazard) => {
    expect(compare(system, right, hazard, 100).length).toBeGreaterThan(0);
  });

  test.each([
    'old-link-to-boiler',
    'cut-out-bypassed',
    'end-switch-fed-from-call',
    'grey-and-orange-swapped-on-three-port',
  ])('on the mistake %s', (id) => {
    for (const hazard of hazards) compare(system, mistake(id).wires, hazard, 20);
  });

  test('on the right wiring with three failures at once', () => {
    const found = compare(system, right, must(hazards[0]), 150, 3);
    expect(found.filter(({ failures }) => failures.length === 3).length).toBeGreaterThan(0);
  });

  test('on a wiring that blows the fuse, where what the fuse stops does not count', () => {
    for (const hazard of hazards) compare(system, mistake('satisfied-on-neutral').wires, hazard, 20);
  });

  test('on 12 random and damaged wirings', () => {
    const given = wirings(
      system,
      references.map(({ wires }) => wires),
    );
    fc.assert(
      fc.property(given, fc.constantFrom(...hazards), (wires, hazard) => {
        compare(system, wires, hazard, 20);
      }),
      { seed, numRuns: 12 },
    );
  });

  test('on a system without a three-port', () => {
    for (const hazard of hazards) compare(twoTwoPorts, twoTwoPortsRight, hazard, 30);
  });
});

const idsOf = (sets: readonly FailureSet[]) =>
  sets.map(({ failures }) => failures.map((failure) => failureId(system, failure)));
const uncontrolled = must(hazards.find(({ id }) => id === 'uncontrolled-heat'));

test('no set holds another, and none is told twice', () => {
  for (const hazard of hazards) {
    const ids = idsOf(layersOf(system, right, hazard, 2));
    for (const [k, set] of ids.entries())
      for (const [j, other] of ids.entries())
        if (j !== k) expect([set, other, other.every((id) => set.includes(id))]).toEqual([set, other, false]);
  }
});

test('sets come smallest first, and in the order of the parts and wires', () => {
  const order = allFailures(system, right).map((failure) => failureId(system, failure));
  for (const hazard of hazards) {
    const ids = idsOf(layersOf(system, right, hazard, 2));
    const sizes = ids.map(({ length }) => length);
    expect(sizes).toEqual([...sizes].sort());
    for (const size of [1, 2]) {
      const places = ids
        .filter(({ length }) => length === size)
        .map((set) => set.map((id) => order.indexOf(id)));
      const inOrder = [...places].sort(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d);
      expect(places).toEqual(inOrder);
    }
  }
});

test('the sets do not depend on how the wires were written down', () => {
  const turned = [...right].reverse().map(([a, b]): Wire => [b, a]);
  for (const hazard of hazards) {
    const named = (wires: readonly Wire[]) =>
      idsOf(layersOf(system, wires, hazard, 2))
        .map((ids) => ids.sort().join('; '))
        .sort();
    expect(named(turned)).toEqual(named(right));
  }
});

test('a hazard that needs no failure is one empty set, with the state it is seen in', () => {
  const [only, ...more] = layersOf(system, mistake('motor-fed-before-thermostat').wires, uncontrolled, 2);
  const found = must(only);
  expect([found.failures, more]).toEqual([[], []]);
  expect(Number.isInteger(found.config.inputs) && found.config.place < system.places).toBe(true);
});

test('progress counts up to the number of sets of each size, and the search can be left at any time', () => {
  const count = allFailures(system, right).length;
  const search = findLayers(system, right, uncontrolled, 2);
  const seen: Progress[] = [];
  let step = search.next();
  while (!step.done) {
    seen.push(step.value);
    step = search.next();
  }
  expect(idsOf(step.value)).toEqual(idsOf(layersOf(system, right, uncontrolled, 2)));
  for (const [size, total] of [
    [1, count],
    [2, (count * (count - 1)) / 2],
  ] as const) {
    const tried = seen.filter((one) => one.size === size).map((one) => one.tried);
    expect(tried.length).toBeGreaterThan(size === 1 ? 0 : 5);
    expect(tried).toEqual([...tried].sort((a, b) => a - b));
    expect(tried.at(-1)).toBe(total);
  }
  expect(new Set(seen.filter(({ size }) => size === 2).map(({ total }) => total)).size).toBe(1);

  const left = findLayers(system, right, uncontrolled, 3);
  expect(left.next().done).toBe(false);
  left.return([]);
  expect(left.next().done).toBe(true);
});
