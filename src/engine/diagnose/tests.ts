import { partOf } from '../model/system.ts';
import { costs } from './costs.ts';
import type { Test } from './evidence.ts';
import { needsDead } from './instrument.ts';
import { isolationActs } from './isolation.ts';
import { energised, type Setup } from './setup.ts';

const name = (setup: Setup, node: number): string => setup.system.nodes[node]!;

/** Everything that can be seen without opening anything: what works, what warms, how the valves stand. */
export function looks({ system }: Setup): Test[] {
  return system.parts.flatMap(({ id, kind, mover }): Test[] => [
    ...(kind.work ? [{ kind: 'works', part: id } as const] : []),
    ...(kind.heat === 'takes' ? [{ kind: 'warms', part: id } as const] : []),
    ...(mover >= 0 && kind.ports ? [{ kind: 'stands', part: id } as const] : []),
  ]);
}

/** With the supply on: the two-pole tester from every terminal to the neutral and to the earth of the supply. */
function liveReadings(setup: Setup): Test[] {
  const { system } = setup;
  const { neutral, earth } = system.supply.out;
  return Array.from({ length: system.terminals }, (_, node) => node).flatMap((node) =>
    [neutral, earth]
      .filter((reference) => reference !== node)
      .map(
        (reference): Test => ({
          kind: 'reads',
          instrument: 'tester',
          between: [name(setup, node), name(setup, reference)],
        }),
      ),
  );
}

/** With the supply off: continuity along every wire and through every contact, ohms of every load. */
function deadReadings(setup: Setup): Test[] {
  const { system, wires } = setup;
  const reads = (instrument: 'continuity' | 'ohms', between: readonly [string, string]): Test => ({
    kind: 'reads',
    instrument,
    between,
  });
  const outside = ({ a, b }: { a: number; b: number }) => a < system.terminals && b < system.terminals;
  return [
    ...wires.map((wire) => reads('continuity', wire)),
    ...system.contacts
      .filter(outside)
      .map(({ a, b }) => reads('continuity', [name(setup, a), name(setup, b)])),
    ...system.loads.filter(outside).map(({ a, b }) => reads('ohms', [name(setup, a), name(setup, b)])),
  ];
}

/** The tests that make sense as the visit stands. None of them changes anything. */
export const testsNow = (setup: Setup): Test[] => [
  ...looks(setup),
  ...(energised(setup) ? liveReadings(setup) : deadReadings(setup)),
];

/** What each step of an isolation costs, by name. */
const STEPS = {
  identify: 'identify',
  isolate: 'isolate',
  lock: 'lockOff',
  prove: 'proveTester',
  'dead-test': 'deadTest',
} as const;

/** Cost of what is still missing to a safe isolation. */
export const isolationCost = (setup: Setup): number =>
  isolationActs(setup).reduce((sum, act) => sum + costs[STEPS[act.do]], 0);

/**
 * Ids of the parts whose covers are still in the way of a test; a look needs none off. Throws an Error for a terminal
 * that is not there.
 */
export function coversOn({ system, open }: Setup, test: Test): string[] {
  if (test.kind !== 'reads') return [];
  const parts = test.between.map((end) => {
    const node = system.nodeOf.get(end);
    if (node === undefined) throw new Error(`no terminal "${end}"`);
    return partOf(system, node).id;
  });
  return [...new Set(parts)].filter((part) => !open.has(part));
}

/** What a test costs now, covers and a safe isolation before they come off counted in. */
export function costOf(setup: Setup, test: Test): number {
  if (test.kind !== 'reads') return costs.look;
  const covers = coversOn(setup, test).length * costs.cover;
  const live = !needsDead(test.instrument) && energised(setup);
  const isolation = covers > 0 ? isolationCost(setup) : 0;
  // Covers come off dead; a live test then needs the supply on again.
  const again = covers > 0 && live ? costs.operate : 0;
  return (live ? costs.liveTest : costs.deadTest) + covers + isolation + again;
}
