import type { Outcome } from '../../../course/claim.ts';
import type { StageState } from '../../../course/stage.ts';
import { atWork, evaluate } from '../../../engine/circuit/plain.ts';
import { type Config, positionOf, type System } from '../../../engine/model/system.ts';
import type { Wire } from '../../../engine/model/wiring.ts';
import { openPaths } from '../../../engine/plant/paths.ts';
import { list } from '../../../engine/rules/words.ts';
import { nameOf } from '../../wiring/names.ts';

interface Seen {
  readonly fires: boolean;
  readonly pumps: boolean;
  readonly heats: readonly string[];
  readonly at: Readonly<Record<string, string>>;
  readonly live: readonly string[];
}

/** What is so in a state. */
function see(system: System, wires: readonly Wire[], config: Config, terminals: readonly string[]): Seen {
  const live = evaluate(system, wires, config);
  const fires = atWork(system, live, 'fires');
  return {
    fires,
    pumps: atWork(system, live, 'pumps'),
    heats: fires ? [...openPaths(system, config.place)].sort() : [],
    at: Object.fromEntries(
      system.movers.flatMap(({ part }) => {
        const mover = system.parts[part];
        return mover ? [[mover.id, positionOf(system, mover, config.place)]] : [];
      }),
    ),
    live: terminals.filter((terminal) => live.line[system.nodeOf.get(terminal) ?? -1] === true),
  };
}

/**
 * What the engine finds wherever the valves can come to rest, in the form in which a step can expect it. Of terminals,
 * only those in the spotlight are told.
 */
export function whatHolds(
  wires: readonly Wire[],
  { system, states }: StageState,
  spot: readonly string[],
): Outcome {
  const terminals = spot.filter((name) => name.includes('/') && system.nodeOf.has(name));
  const seen = states.map((config) => see(system, wires, config, terminals));
  const [first] = seen;
  if (!first) return {};
  const same = (of: (one: Seen) => unknown) =>
    seen.every((one) => JSON.stringify(of(one)) === JSON.stringify(of(first)));
  const at = Object.fromEntries(Object.entries(first.at).filter(([id]) => same((one) => one.at[id])));
  const live = terminals.filter((id) => seen.every((one) => one.live.includes(id)));
  const dead = terminals.filter((id) => seen.every((one) => !one.live.includes(id)));
  return {
    ...(same(({ fires }) => fires) && { fires: first.fires }),
    ...(same(({ pumps }) => pumps) && { pumps: first.pumps }),
    ...(same(({ heats }) => heats) && { heats: first.heats }),
    ...(Object.keys(at).length > 0 && { at }),
    ...(live.length > 0 && { live }),
    ...(dead.length > 0 && { dead }),
  };
}

/** What a step expects, a piece for each key, in words. */
export function sayExpected(
  system: System,
  expect: Outcome,
): { readonly key: keyof Outcome; readonly says: string }[] {
  const part = (id: string) => system.parts.find((one) => one.id === id)?.name ?? id;
  const parts = (ids: readonly string[]) => list(ids.map(part));
  const ends = (ids: readonly string[]) =>
    list(ids.map((id) => (system.nodeOf.has(id) ? nameOf(system, id) : id)));
  const say: { [K in keyof Outcome]-?: (value: NonNullable<Outcome[K]>) => string } = {
    fires: (on) => (on ? 'The boiler fires' : 'The boiler does not fire'),
    pumps: (on) => (on ? 'The pump runs' : 'The pump does not run'),
    heats: (ids) => (ids.length > 0 ? `Heat goes to: ${parts(ids)}` : 'Heat goes nowhere'),
    works: (ids) => `At work: ${parts(ids)}`,
    idle: (ids) => `Idle: ${parts(ids)}`,
    at: (places) => list(Object.entries(places).map(([id, position]) => `${part(id)} rests at ${position}`)),
    live: (ids) => `Live: ${ends(ids)}`,
    dead: (ids) => `Dead: ${ends(ids)}`,
    rejected: (on) => (on ? 'The checker rejects the wiring' : 'The checker accepts the wiring'),
    breaks: (ids) => `It breaks: ${list(ids)}`,
  };
  return (Object.keys(expect) as (keyof Outcome)[]).flatMap((key) => {
    const value = expect[key];
    return value === undefined ? [] : [{ key, says: (say[key] as (value: unknown) => string)(value) }];
  });
}
