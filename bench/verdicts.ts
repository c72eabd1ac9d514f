import { makeJudge } from '../src/engine/grade/judge.ts';
import { atMost, type Section, sayTime } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, median, timeAll, type Work } from './stopwatch.ts';

/** The most that a verdict should take: a millisecond. */
const MOST = 1e6;

/** How long a whole verdict takes: accepted, and rejected with the shortest way to every finding. */
export function timeVerdicts({ system, reference, mistakes }: Material, effort: Effort): Section {
  const { judge } = makeJudge(system);
  const work =
    ({ wires }: { wires: Parameters<typeof judge>[0] }): Work =>
    () => {
      const { states, findings } = judge(wires);
      return states + findings.length;
    };
  const works = Object.fromEntries(mistakes.map((mistake) => [mistake.id, work(mistake)]));
  const { accepted } = timeAll({ accepted: work(reference) }, effort);
  const rejected = Object.entries(timeAll(works, effort, { rounds: 9, roundMs: 4 }));
  const [worst, slowest] = rejected.reduce((a, b) => (b[1] > a[1] ? b : a));
  const middle = median(rejected.map(([, ns]) => ns));
  return {
    title: 'A verdict',
    figures: [
      atMost(`accepted (${reference.id})`, accepted, MOST, sayTime),
      atMost(`wrong, the middle of ${mistakes.length} mistakes`, middle, MOST, sayTime),
      atMost(`wrong, the slowest (${worst})`, slowest, MOST, sayTime),
    ],
  };
}
