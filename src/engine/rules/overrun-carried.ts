import { anyOf } from '../circuit/sets.ts';
import { positionOf } from '../model/system.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { saySettings } from './words.ts';

/** A part that asks for its pump, call or overrun, while none runs. */
const unpumped = ({ system, config, working }: StateView) =>
  system.parts.some((one, p) => one.kind.work?.does === 'pumps' && working(p))
    ? undefined
    : system.parts.find(
        (part) => part.kind.pumpedWhile && positionOf(system, part, config.place) === part.kind.pumpedWhile,
      );

export const overrunCarried: StateRule = {
  id: 'overrun-carried',
  title: 'The pump runs for as long as the boiler asks for it, overrun included',
  fails: 'The pump does not run on after the call',
  severity: 'fault',
  source: 'common practice',
  function: 'The boiler asks for its pump to carry its heat away, and nothing runs.',
  compare:
    'Compare what feeds the pump with the boiler’s own pump terminal, and that with its permanent line.',
  scope: 'met',
  broken: (state) => state.powered && unpumped(state) !== undefined,
  where: ({ system, sets, powered, stands }) => {
    const asking = system.parts.flatMap(({ kind, mover }) =>
      kind.pumpedWhile ? [stands(mover, kind.motion?.positions.indexOf(kind.pumpedWhile) ?? 0)] : [],
    );
    const asked = sets.and(powered, anyOf(sets, asking));
    const pumps = system.parts.flatMap(({ kind }, part) => (kind.work?.does === 'pumps' ? [part] : []));
    return ({ working }) => {
      const running = anyOf(
        sets,
        pumps.map((part) => working[part]!),
      );
      return sets.minus(asked, running);
    };
  },
  explain(state) {
    const { name } = unpumped(state)!;
    return {
      says: `${saySettings(state)}, the ${name.toLowerCase()} still asks for the pump, and the pump stands still.`,
      terminals: [],
    };
  },
};
