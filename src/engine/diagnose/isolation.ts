import type { Act } from './act.ts';
import { DEAD_PAIRS, energised, everyPair, type Setup, suppliesLeft } from './setup.ts';

/** The acts that safe isolation consists of. */
export type IsolationAct = Extract<
  Act,
  { readonly do: 'identify' | 'isolate' | 'lock' | 'prove' | 'dead-test' }
>;

/**
 * What is still missing to a full safe isolation, in its order (common practice): identify every supply, isolate, lock,
 * prove the tester, test every pair, prove the tester again. Nothing when the circuit is proved dead.
 */
export function isolationActs(setup: Setup): IsolationAct[] {
  const { proof } = setup;
  const missing = (needed: boolean, act: IsolationAct): IsolationAct[] => (needed ? [act] : []);
  const on = energised(setup);
  return [
    ...suppliesLeft(setup).map((supply): IsolationAct => ({ do: 'identify', supply })),
    ...missing(on, { do: 'isolate' }),
    ...missing(on || !proof.locked, { do: 'lock' }),
    ...missing(!proof.tester, { do: 'prove' }),
    ...DEAD_PAIRS.filter((pair) => !proof.dead.has(pair)).map(
      (pair): IsolationAct => ({ do: 'dead-test', pair }),
    ),
    ...missing(!everyPair(proof) || !proof.testerAgain, { do: 'prove' }),
  ];
}
