import { makeSweepRoom, sweep } from '../src/engine/circuit/fast.ts';
import { makeMoves, sweepMoves } from '../src/engine/circuit/motion.ts';
import { mergeNets } from '../src/engine/circuit/nets.ts';
import { exploreLanes, makeReach } from '../src/engine/explore/reach.ts';
import { countLanes, makeJudge } from '../src/engine/grade/judge.ts';
import { atMost, type Section, sayTime } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** What a configuration costs, all in and part by part. */
export function timeParts({ system, configurations, reference }: Material, effort: Effort): Section {
  const { wires } = reference;
  const judge = makeJudge(system);
  const { frame } = judge;
  const nets = mergeNets(system, wires);
  const room = makeSweepRoom(frame);
  const moves = makeMoves(frame);
  const reach = makeReach(frame);

  const stages = {
    'merging the wires': () => mergeNets(system, wires).count,
    'what is live': () => sweep(frame, nets, room).line[0] ?? 0,
    'which way the valves go': () => sweepMoves(frame, nets, room, moves).rest[0] ?? 0,
    exploring: () => exploreLanes(frame, moves, reach).judged[0] ?? 0,
  };
  const ns = timeAll(
    {
      ...stages,
      whole: () => countLanes(judge.sweepStates(wires).reach.judged),
      states: () => stages['what is live']() + stages['which way the valves go']() + stages.exploring(),
    },
    effort,
  );
  const each = (time: number) => sayTime(time / configurations);
  const names = Object.keys(stages) as (keyof typeof stages)[];
  return {
    title: `A configuration (${configurations} in all: combinations of inputs × places of the valves)`,
    figures: [
      atMost('with compiling the wires', ns.whole / configurations, 60, sayTime),
      { what: 'without rules and compiling', value: each(ns.states) },
      ...names.map((name) => ({ what: `  ${name}`, value: each(ns[name]) })),
      { what: '  rules', value: each(ns.whole - ns.states - ns['merging the wires']) },
      { what: 'whole wiring, without putting findings in words', value: sayTime(ns.whole) },
    ],
  };
}
