import { type Place, positionOf, type System } from '../../engine/model/system.ts';
import { openPaths } from '../../engine/plant/paths.ts';
import { readTree, wayTo } from './tree.ts';

/** What the water in a pipe does. `moving`: the pump drives it, but nothing heats it. */
export type Water = 'hot' | 'return' | 'moving' | 'still';

/** What works, and which takers lie on an open loop (ids). */
export interface Heat {
  readonly open: ReadonlySet<string>;
  readonly fires: boolean;
  readonly pumps: boolean;
}

/** The heat in one state of the system. */
export const heatOf = (system: System, place: Place, fires: boolean, pumps: boolean): Heat => ({
  open: openPaths(system, place),
  fires,
  pumps,
});

/** What the water does in a pipe that serves these takers. */
export function waterIn(run: { side: 'flow' | 'return'; serves: readonly string[] }, heat: Heat): Water {
  if (!heat.pumps || !run.serves.some((id) => heat.open.has(id))) return 'still';
  if (!heat.fires) return 'moving';
  return run.side === 'flow' ? 'hot' : 'return';
}

/** Whether a taker is being heated. */
export const isHeated = (id: string, heat: Heat): boolean => heat.fires && heat.pumps && heat.open.has(id);

/** Joins names as English does: "a", "a and b", "a, b and c". */
const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

/** A part's name inside a sentence: "the two-port", "the cylinder". */
const say = (name: string): string => `the ${name.toLowerCase().replace(/ valve$/, '')}`;

/** What the boiler and the pump do, in one or two sentences. */
function saysWork(heat: Heat): string {
  if (!heat.fires) return heat.pumps ? 'Nothing fires. The pump runs.' : 'Nothing fires.';
  if (!heat.pumps) return 'The boiler fires but the pump stands still, so the heat goes nowhere.';
  return heat.open.size > 0
    ? 'The boiler fires and the pump runs.'
    : 'The boiler fires and the pump runs, but every way is shut.';
}

/**
 * Where the heat goes, in plain sentences: what works, what is heated, and at which valves the other ways are
 * shut. Throws an Error when the pipes are not one boiler's loop.
 */
export function describeHeat(system: System, place: Place, fires: boolean, pumps: boolean): string {
  const heat = heatOf(system, place, fires, pumps);
  const { first } = readTree(system);
  const takers = system.parts.filter(({ kind }) => kind.heat === 'takes');
  const sentences = [saysWork(heat)];

  const heated = takers.filter(({ id }) => isHeated(id, heat)).map(({ short }) => say(short));
  if (heated.length > 0) sentences.push(`Heat goes to ${list(heated)}.`);

  const shut = takers.flatMap(({ id, short }) => {
    const valves = wayTo(first, id).filter(({ part, entry, exit }) => {
      const passes = part.kind.passes?.(positionOf(system, part, place)) ?? [];
      return !passes.some((pair) => pair.includes(entry) && pair.includes(exit));
    });
    return valves.length > 0
      ? [`to ${say(short)} is shut at ${list(valves.map((v) => say(v.part.name)))}`]
      : [];
  });
  if (shut[0]) {
    const rest = shut.slice(1).map((way) => way.replace(' is shut', ''));
    sentences.push(`The way ${[shut[0], ...rest].join(', and ')}.`);
  }
  return sentences.join(' ');
}

/** The cut-out as the drawing of the plant takes it: nothing on a system that has none in its wiring. */
export function cutOutOf(settings: Readonly<Record<string, string>>): { cutOut?: 'healthy' | 'tripped' } {
  const setting = settings['cut-out'];
  return setting === undefined ? {} : { cutOut: setting === 'tripped' ? 'tripped' : 'healthy' };
}
