import { type Config, positionOf, type Settings, type System, settingsOf } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { openPaths } from '../plant/paths.ts';
import { stateRules } from '../rules/index.ts';
import { type Judge, makeJudge } from './judge.ts';

/** One judged state, in names. */
export interface StateRow {
  readonly config: Config;
  readonly settings: Settings;
  /** By the id of every part that moves: the position it rests in. */
  readonly positions: Readonly<Record<string, string>>;
  readonly fires: boolean;
  readonly pumps: boolean;
  /** Parts that the boiler heats: it fires, and a path through them is open. */
  readonly heats: readonly string[];
  /** Ids of the rules about states that this one breaks, the gravest first. */
  readonly broken: readonly string[];
}

/**
 * Every judged state of a wiring: each resting state reachable from cold, by settings and then by place.
 * Wires must name terminals of the system. Give the system's judge when there is one already.
 */
export function stateTable(
  system: System,
  wires: readonly Wire[],
  judge: Judge = makeJudge(system),
): StateRow[] {
  const { frame, reach, fires: firing, pumps, broken } = judge.sweepStates(wires);
  const { blocks } = frame;
  const heated = Array.from({ length: system.places }, (_, place) => [...openPaths(system, place)]);
  const moving = system.movers.map(({ part }) => system.parts[part]!);
  const rows: StateRow[] = [];
  for (let inputs = 0; inputs < 1 << system.inputs.length; inputs++) {
    const settings = settingsOf(system, inputs);
    for (let place = 0; place < system.places; place++) {
      const isIn = (lanes: Int32Array) =>
        ((lanes[place * blocks + (inputs >> 5)]! >>> (inputs & 31)) & 1) === 1;
      if (!isIn(reach.judged)) continue;
      const fires = isIn(firing);
      rows.push({
        config: { inputs, place },
        settings,
        positions: Object.fromEntries(moving.map((part) => [part.id, positionOf(system, part, place)])),
        fires,
        pumps: isIn(pumps),
        heats: fires ? heated[place]! : [],
        broken: stateRules.filter((_, r) => isIn(broken[r]!)).map(({ id }) => id),
      });
    }
  }
  return rows;
}
