import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { allFailures, compatible } from '../src/engine/faults/failure.ts';
import { hazards } from '../src/engine/faults/hazards/index.ts';
import { layersOf } from '../src/engine/faults/layers.ts';
import { makeTestBed } from '../src/engine/faults/test-bed.ts';
import { plainSearch } from '../tests/engine/faults/plain-search.ts';
import { atMost, type Figure, type Section, sayTime, whole } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, median, timeAll } from './stopwatch.ts';

/** The most that all single and double failures of the flagship should take: fifty milliseconds. */
const MOST = 50e6;
/** About how many pairs of failures to try both ways. */
const SOME = 20;

/** How long it takes to find every smallest set of failures that lets a hazard through. */
export async function timeFaults(
  { system, reference: { id, wires } }: Material,
  effort: Effort,
): Promise<Section> {
  const searches = Object.fromEntries(
    hazards.map((hazard) => [hazard.id, () => layersOf(system, wires, hazard, 2).length]),
  );
  const timed = timeAll(searches, effort, { rounds: 7, roundMs: 20 });

  const [hazard] = hazards;
  const [watch] = hazard?.watches(system) ?? [];
  if (!hazard || !watch) throw new Error('no hazard to look for');
  const failures = allFailures(system, wires);
  const strike = makeTestBed(system, wires, hazard, watch);
  const strikePlain = plainSearch(system, wires, hazard);
  const pairs = failures.flatMap((a, k) =>
    failures.slice(k + 1).flatMap((b) => (compatible(a, b) ? [[a, b]] : [])),
  );
  // From all over the list, and not so many that the plain search takes minutes.
  const some = pairs.filter((_, k) => k % Math.ceil(pairs.length / SOME) === 0);
  const { fast, plain } = timeAll(
    {
      fast: () => some.filter((pair) => strike(pair)).length,
      plain: () => some.filter((pair) => strikePlain(pair)).length,
    },
    effort,
    { rounds: 7, roundMs: 20 },
  );

  const sets = failures.length + (failures.length * (failures.length - 1)) / 2;
  const triples: Figure[] = effort.smoke ? [] : [timeTriples(system, wires)];
  return {
    title: `Layers of protection (${id}: ${failures.length} failures, ${sets} sets of one and two)`,
    figures: [
      { what: 'two failures, fast against plain', value: `${whole(plain / fast)} ×` },
      { what: 'two failures, fast', value: sayTime(fast / some.length) },
      ...Object.entries(timed).map(([name, ns]) => atMost(`all ones and twos, ${name}`, ns, MOST, sayTime)),
      {
        what: `the same for the first time in a new thread, ${hazard.id}`,
        value: sayTime(await timeFirst(effort)),
      },
      ...triples,
    ],
  };
}

/** What a learner's first question costs: the code is not compiled yet. Processor time of the thread that searches. */
async function timeFirst({ smoke }: Effort): Promise<number> {
  const taken: number[] = [];
  for (let round = 0; round < (smoke ? 1 : 5); round++) {
    const worker = new Worker(new URL('first-search.ts', import.meta.url));
    const [ns] = (await once(worker, 'message')) as [number];
    taken.push(ns);
    await worker.terminate();
  }
  return median(taken);
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
