import { makeSweepRoom, sweep } from '../src/engine/circuit/fast.ts';
import { makeFrame } from '../src/engine/circuit/frame.ts';
import { mergeNets } from '../src/engine/circuit/nets.ts';
import { evaluate } from '../src/engine/circuit/plain.ts';
import { countLanes, makeJudge } from '../src/engine/grade/judge.ts';
import { judgePlain } from '../src/engine/grade/plain.ts';
import { atLeast, type Section, sayTime } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** The fast evaluator against the plain one, on the same states of the same wiring. */
export function compareEvaluators({ system, configurations, reference }: Material, effort: Effort): Section {
  const { wires } = reference;
  const judge = makeJudge(system);
  const frame = makeFrame(system);
  const room = makeSweepRoom(frame);
  const judged = countLanes(judge.sweepStates(wires).reach.judged);
  if (judged !== judgePlain(system, wires).judged.size) throw new Error('the two judge different states');

  const ns = timeAll(
    {
      fastJudge: () => countLanes(judge.sweepStates(wires).reach.judged),
      plainJudge: () => judgePlain(system, wires).judged.size,
      fastCircuit: () => sweep(frame, mergeNets(system, wires), room).line[0] ?? 0,
      plainCircuit() {
        let working = 0;
        for (let inputs = 0; inputs < 2 ** system.inputs.length; inputs++)
          for (let place = 0; place < system.places; place++)
            working += evaluate(system, wires, { inputs, place }).works.filter(Boolean).length;
        return working;
      },
    },
    effort,
    { rounds: 9 },
  );
  return {
    title: `Fast evaluator against the plain one (${reference.id})`,
    figures: [
      atLeast(`a judged state, wires to broken rules (${judged} states)`, ns.plainJudge / ns.fastJudge, 50),
      atLeast(
        `a configuration, wires to live nodes (${configurations})`,
        ns.plainCircuit / ns.fastCircuit,
        50,
      ),
      { what: 'judged state, fast', value: sayTime(ns.fastJudge / judged) },
      { what: 'judged state, plain', value: sayTime(ns.plainJudge / judged) },
      { what: 'configuration, fast', value: sayTime(ns.fastCircuit / configurations) },
      { what: 'configuration, plain', value: sayTime(ns.plainCircuit / configurations) },
    ],
  };
}
