import { describe, expect, test } from 'vitest';
import { closedContacts, evaluate, nextPlaces, wireJoints } from '../../../src/engine/circuit/plain.ts';
import { isCalled } from '../../../src/engine/model/system.ts';
import { followLive } from '../../../src/ui/drawings/follow.ts';
import { librarySystems } from '../../engine/support/library.ts';

describe.each(librarySystems)('Following the live of $id', ({ system, references }) => {
  const journeys = references.flatMap(({ id, wires }) =>
    system.spec.demands.map((demand) => ({
      name: `${id}, ${demand.id}`,
      wires,
      demand,
      journey: followLive(system, wires, demand),
    })),
  );

  test('Every call of a right wiring arrives at what it is for, with the valves at rest', () => {
    for (const { name, wires, demand, journey } of journeys) {
      const live = evaluate(system, wires, journey.config);
      expect(isCalled(system, journey.config.inputs, demand), name).toBe(true);
      expect(nextPlaces(system, live, journey.config.place), name).toEqual([]);
      expect(journey.arrives, name).toBe(true);
      expect(live.works[journey.steps.at(-1)?.load ?? -1], name).toBe(true);
    }
  });

  test('Each step goes on from the one before by a wire or by a closed contact', () => {
    for (const { name, wires, journey } of journeys) {
      const been = new Set(system.supplies.map(({ line }) => line));
      const closed = closedContacts(system, journey.config);
      const joints = wireJoints(system, wires);
      for (const { node, contact } of journey.steps) {
        const { a, b } = system.contacts[contact ?? -1] ?? { a: -1, b: -1 };
        const crossed = closed[contact ?? -1] && ((a === node && been.has(b)) || (b === node && been.has(a)));
        const wired = joints[node]?.some((other) => been.has(other));
        const ownPair = system.loads.some((load) => load.spec.ownLoop && load.a === node);
        expect(been.has(node) || wired || crossed || ownPair, name).toBe(true);
        been.add(node);
      }
    }
  });

  test('Each step is told in whole sentences', () => {
    for (const { name, journey } of journeys)
      for (const { says } of journey.steps) {
        expect(says, name).toMatch(/^[A-Z].*\.$/);
        expect(says, name).not.toMatch(/undefined|NaN/);
      }
  });
});

test('On two two-ports the call opens the valve first, and then its end switch asks the boiler', () => {
  const found = librarySystems.find(({ id }) => id === 'two-two-ports');
  const wires = found?.references[0]?.wires ?? [];
  const water = found?.spec.demands.find(({ id }) => id === 'water');
  if (!found || !water) throw new Error('two-two-ports is not there');
  const says = followLive(found.system, wires, water).steps.map((step) => step.says);
  const opens = says.findIndex((text) =>
    text.includes('That moves the hot water valve: now the hot water valve is open.'),
  );
  const asks = says.findIndex((text) => text.includes('end switch is closed, and orange is live'));
  expect(opens).toBeGreaterThan(0);
  expect(asks).toBeGreaterThan(opens);
  expect(says.at(-1)).toBe('Line comes in here and neutral takes it home: the boiler fires.');
});

test('With the wire to the boiler missing, the walk says where the live stops', () => {
  const found = librarySystems.find(({ id }) => id === 'three-port');
  const wires = found?.references[0]?.wires.filter((wire) => !wire.includes('boiler/SL')) ?? [];
  const water = found?.spec.demands.find(({ id }) => id === 'water');
  if (!found || !water) throw new Error('three-port is not there');
  const { steps, arrives } = followLive(found.system, wires, water);
  expect(arrives).toBe(false);
  expect(steps.at(-1)?.says).toBe(
    'The live does not get to boiler SL. It stops at boiler SL. No wire takes it on.',
  );
});
