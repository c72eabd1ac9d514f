import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { countLanes, makeJudge } from '../src/engine/grade/judge.ts';
import { makeWideJudge } from '../src/engine/grade/wide-judge.ts';
import type { System } from '../src/engine/model/system.ts';
import type { Wire } from '../src/engine/model/wiring.ts';
import { zonesRight, zonesSystem, zonesWrong } from '../tests/engine/support/zones.ts';
import { atMost, type Figure, type Section, sayTime, whole } from './figure.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** The most that six zones with hot water and frost protection should take: 200 ms. */
const MOST = 200e6;
/** Going through every state one by one, four zones take over a minute to prepare, and five do not fit. */
const MOST_ONE_BY_ONE = 3;

/** Time against the number of zones: every state one by one, and all at once as decision diagrams. */
export async function timeZones({ smoke }: Effort): Promise<Section> {
  const effort = { smoke };
  const figures: Figure[] = [];
  const size = (system: System) => `${whole(2 ** system.inputs.length * system.places)} configurations`;
  for (let zones = 1; zones <= 6; zones++) {
    const system = zonesSystem(zones);
    const right = zonesRight(zones);
    const what = `hot water, frost and ${zones} ${zones === 1 ? 'zone' : 'zones'}`;
    const wide = makeWideJudge(system);
    const judge = (wires: readonly Wire[]) => wide.judge(wires).states;
    const works = Object.fromEntries(zonesWrong(zones).map(({ id, wires }) => [id, () => judge(wires)]));
    const { accepted } = timeAll({ accepted: () => judge(right) }, effort, { rounds: 5 });
    const rejected = Object.entries(timeAll(works, effort, { rounds: 3 }));
    const [worst, slowest] = rejected.reduce((a, b) => (b[1] > a[1] ? b : a));
    if (zones <= (smoke ? 1 : MOST_ONE_BY_ONE)) {
      const { sweepStates } = makeJudge(system);
      const { one } = timeAll({ one: () => countLanes(sweepStates(right).reach.judged) }, effort, {
        rounds: 3,
      });
      figures.push({ what: `${what}, one by one (${size(system)})`, value: sayTime(one) });
    }
    figures.push({ what: `${what}, as diagrams`, value: sayTime(accepted) });
    if (zones < 6) continue;
    figures.unshift(
      atMost(`${what}, right (${size(system)})`, accepted, MOST, sayTime),
      atMost(`${what}, wrong, the slowest of ${rejected.length} (${worst})`, slowest, MOST, sayTime),
      atMost(
        'that one, in a thread where nothing has run before',
        await timeFirst(zones, worst),
        MOST,
        sayTime,
      ),
    );
  }
  return { title: 'Time against the number of zones: wires to verdict', figures };
}

/** Nanoseconds that preparing the system and judging this wiring take the first time. */
async function timeFirst(zones: number, id: string): Promise<number> {
  const worker = new Worker(new URL('first-zones.ts', import.meta.url), { workerData: { zones, id } });
  const [ns] = await once(worker, 'message');
  return ns;
}
