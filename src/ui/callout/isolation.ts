import type { Act } from '../../engine/diagnose/act.ts';
import { DEAD_PAIRS, energised, everyPair, type Setup } from '../../engine/diagnose/setup.ts';
import type { System } from '../../engine/model/system.ts';

/** A step of safe isolation, whether it is done as things stand, and why it is done at all. */
export interface IsolationStep {
  readonly id: string;
  readonly act: Act;
  readonly does: string;
  readonly why: string;
  readonly done: boolean;
}

const PAIRS = {
  'L-N': 'line to neutral',
  'L-E': 'line to earth',
  'N-E': 'neutral to earth',
} as const;

const suppliesOf = ({ parts }: System) => parts.filter(({ kind }) => kind.supply);

/** The whole of safe isolation in its order (common practice), with what is done of it. */
export function isolationSteps(setup: Setup): IsolationStep[] {
  const { system, proof } = setup;
  const off = !energised(setup);
  return [
    ...suppliesOf(system).map(
      ({ id, name }): IsolationStep => ({
        id: `identify ${id}`,
        act: { do: 'identify', supply: id },
        does: `Find what feeds it: ${name.toLowerCase()}`,
        why: 'Trace it to its own fuse or switch. There may be more than one supply.',
        done: proof.identified.has(id),
      }),
    ),
    {
      id: 'isolate',
      act: { do: 'isolate' },
      does: 'Switch off what you found',
      why: 'At a switch that breaks line and neutral.',
      done: off,
    },
    {
      id: 'lock',
      act: { do: 'lock' },
      does: 'Lock it off and put a notice on',
      why: 'Keep the key in your pocket: nobody can switch it on.',
      done: off && proof.locked,
    },
    {
      id: 'prove',
      act: { do: 'prove' },
      does: 'Prove the tester on a known source',
      why: 'A dead tester calls everything dead.',
      done: proof.tester,
    },
    ...DEAD_PAIRS.map(
      (pair): IsolationStep => ({
        id: pair,
        act: { do: 'dead-test', pair },
        does: `Test for dead: ${PAIRS[pair]}`,
        why: 'Every pair, for a crossed or broken wire can leave one of them live.',
        done: proof.dead.has(pair),
      }),
    ),
    {
      id: 'prove again',
      act: { do: 'prove' },
      does: 'Prove the tester again',
      why: 'It may have failed since you proved it.',
      done: everyPair(proof) && proof.testerAgain,
    },
  ];
}
