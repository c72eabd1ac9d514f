import { allFailures } from '../src/engine/faults/failure.ts';
import { hazards } from '../src/engine/faults/hazards/index.ts';
import { layersOf } from '../src/engine/faults/layers.ts';
import { makeTestBed } from '../src/engine/faults/test-bed.ts';
import { plainSearch } from '../tests/engine/faults/plain-search.ts';
import { atMost, type Figure, type Section, sayTime, whole } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** The most that all single and double failures of the flagship should take: fifty milliseconds. */
const MOST = 50e6;

/** How long it takes to find every smallest set of failures that lets a hazard through. */
export function timeFaults({ system, reference: { id, wires } }: Material, effort: Effort): Section {
  const pairs = Object.fromEntries(
    hazards.map((hazard) => [hazard.id, () => layersOf(system, wires, hazard, 2).length]),
  );
  const timed = timeAll(pairs, effort, { rounds: 7, roundMs: 20 });

  const [hazard] = hazards;
  const [watch] = hazard?.watches(system) ?? [];
  if (!hazard || !watch) throw new Error('no hazard to look for');
  const failures = allFailures(system, wires);
  const strike = makeTestBed(system, wires, hazard, watch);
  const strikePlain = plainSearch(system, wires, hazard);
  let next = 0;
  /** Each single failure in turn. */
  const one = () => [failures[next++ % failures.length] ?? failures[0]].flatMap((failure) => failure ?? []);
  const { fast, plain } = timeAll(
    { fast: () => (strike(one()) ? 1 : 0), plain: () => (strikePlain(one()) ? 1 : 0) },
    effort,
    { rounds: 7, roundMs: 20 },
  );

  const sets = failures.length + (failures.length * (failures.length - 1)) / 2;
  const triples: Figure[] = effort.smoke ? [] : [timeTriples(system, wires)];
  return {
    title: `Layers of protection (${id}: ${failures.length} failures, ${sets} sets of one and two)`,
    figures: [
      { what: 'one set of failures, fast against plain', value: `${whole(plain / fast)} ×` },
      { what: 'one set of failures, fast', value: sayTime(fast) },
      ...Object.entries(timed).map(([name, ns]) => atMost(`all ones and twos, ${name}`, ns, MOST, sayTime)),
      ...triples,
    ],
  };
}

/** All sets of three, once: they are tried off the page's own thread, with progress shown. */
function timeTriples(system: Material['system'], wires: Material['reference']['wires']): Figure {
  const [hazard] = hazards;
  const start = process.cpuUsage();
  const found = hazard ? layersOf(system, wires, hazard, 3).length : 0;
  const { user, system: kernel } = process.cpuUsage(start);
  return {
    what: `all up to threes, ${hazard?.id ?? ''} (${found} sets found)`,
    value: sayTime((user + kernel) * 1000),
  };
}
