import { directions } from '../circuit/plain.ts';
import { explainValve } from './explain.ts';
import type { StateRule } from './rule.ts';
import { saySettings } from './words.ts';

/**
 * Whether a state hunts depends on what can follow it, not on the state alone, so `broken` here says only that
 * something moves; the exploration decides (see `Reach.hunting` and `PlainReach.hunting`).
 */
export const noHunting: StateRule = {
  id: 'no-hunting',
  title: 'Every valve comes to rest',
  fails: 'A valve never comes to rest',
  severity: 'fault',
  source: 'common practice',
  function: 'A valve feeds itself in one position and starves itself in the next, so it never settles.',
  compare: 'Compare what the valve receives before and after it moves. Which of its own switches changes it?',
  scope: 'met',
  broken: ({ system, live, config }) => directions(system, live, config.place).some((step) => step !== 0),
  where:
    () =>
    ({ hunting }) =>
      hunting,
  explain(state) {
    const { system, live, config } = state;
    const moving = directions(system, live, config.place).findIndex((step) => step !== 0);
    const { says, terminals } = explainValve(state, system.movers[Math.max(0, moving)]!.part);
    return {
      says: `${saySettings(state)}, the valves move to and fro and never come to rest. ${says}`,
      terminals,
    };
  },
};
