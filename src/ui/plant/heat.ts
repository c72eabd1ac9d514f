import { type Part, type Place, positionOf, type System } from '../../engine/model/system.ts';
import { openWays } from '../../engine/plant/paths.ts';
import { partsOf, readLoops, readTree, type Tree, wayTo } from './tree.ts';

/** What the water in a pipe does. `moving`: the pump drives it, but nothing heats it. */
export type Water = 'hot' | 'return' | 'moving' | 'still';

/** What works in one loop of the pipes, and which takers lie on an open way (ids). */
export interface Heat {
  readonly open: ReadonlySet<string>;
  /** Whether a heat source of the loop is hot, and whether its water is driven. */
  readonly fires: boolean;
  readonly pumps: boolean;
  /** Takers that no pump stands before: hot water rises to them by itself. */
  readonly free: ReadonlySet<string>;
  /** Ids of the boilers and pumps of the loop that are at work. */
  readonly working: ReadonlySet<string>;
}

/** Parts at work when nothing more is known than that boilers fire and pumps run. */
export const allAtWork = (system: System, fires: boolean, pumps: boolean): ReadonlySet<string> =>
  new Set(
    system.parts
      .filter(({ kind: { work } }) => (work?.does === 'fires' && fires) || (work?.does === 'pumps' && pumps))
      .map(({ id }) => id),
  );

/** The heat in one loop of the system, in one state. `working`: ids of the parts at work. */
export function heatIn(system: System, place: Place, loop: Tree, working: ReadonlySet<string>): Heat {
  const sources = [loop.source, ...loop.beside];
  const pumps = partsOf(loop).filter(({ kind }) => kind.work?.does === 'pumps');
  const ways = openWays(system, place);
  const fires = sources.some(({ id, kind }) => !kind.work || working.has(id));
  const hot = sources.filter(({ kind }) => !kind.work).map(({ id }) => id);
  const isPump = ({ kind }: Part) => kind.work?.does === 'pumps';
  const byItself = loop.first.takers.filter(
    (id) =>
      pumps.length > 0 && !loop.back.some(isPump) && !wayTo(loop.first, id).some(({ part }) => isPump(part)),
  );
  return {
    free: new Set(byItself),
    open: new Set(sources.flatMap(({ id }) => [...(ways.get(id) ?? [])])),
    fires,
    // A boiler with its pump inside drives the water itself.
    pumps: pumps.length > 0 ? pumps.some(({ id }) => working.has(id)) : fires,
    working: new Set([...working, ...hot]),
  };
}

/** The heat in the first loop of the system, in one state. */
export const heatOf = (system: System, place: Place, fires: boolean, pumps: boolean): Heat =>
  heatIn(system, place, readTree(system), allAtWork(system, fires, pumps));

/** What the water does in a pipe that serves these takers. */
export function waterIn(run: { side: 'flow' | 'return'; serves: readonly string[] }, heat: Heat): Water {
  const moves = (id: string) => heat.open.has(id) && (heat.pumps || (heat.fires && heat.free.has(id)));
  if (!run.serves.some(moves)) return 'still';
  if (!heat.fires) return 'moving';
  return run.side === 'flow' ? 'hot' : 'return';
}

/** Whether a taker is being heated. */
export const isHeated = (id: string, heat: Heat): boolean =>
  heat.fires && (heat.pumps || heat.free.has(id)) && heat.open.has(id);

/** Joins names as English does: "a", "a and b", "a, b and c". */
const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

/** A part's name inside a sentence: "the two-port", "the cylinder". */
const say = (name: string): string => `the ${name.toLowerCase().replace(/ valve$/, '')}`;

/** More ways than this are not listed one by one when all are shut. */
const MANY = 3;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Parts of a loop that do this work, by whether they do it now. */
const named = (parts: readonly Part[], { working }: Heat): string[] =>
  parts.filter(({ id }) => working.has(id)).map(({ name }) => `the ${name.toLowerCase()}`);

/** What the heat sources and the pumps of a loop do, in one or two sentences. */
function saysWork(loop: Tree, heat: Heat): string {
  const sources = [loop.source, ...loop.beside];
  const pumps = partsOf(loop).filter(({ kind }) => kind.work?.does === 'pumps');
  const firing = named(sources, heat);
  const verb = (names: readonly string[], one: string, many: string) => (names.length > 1 ? many : one);
  const fire = sources.some(({ kind }) => kind.work)
    ? `${list(firing)} ${verb(firing, 'fires', 'fire')}`
    : `${list(firing)} is hot`;
  const running = named(pumps, heat);
  const run = `${list(running)} ${verb(running, 'runs', 'run')}`;
  if (sources.every(({ kind }) => kind.work?.does === 'pumps')) {
    const names = list(sources.map(({ name }) => `the ${name.toLowerCase()}`));
    return `${capital(names)} ${heat.fires ? 'runs' : 'stands still'}.`;
  }
  if (!heat.fires) return running.length > 0 ? `Nothing fires. ${capital(run)}.` : 'Nothing fires.';
  if (pumps.length > 0 && running.length === 0) {
    const still =
      pumps.length > 1 ? 'the pumps stand still' : `the ${pumps[0]!.name.toLowerCase()} stands still`;
    const rises = [...heat.free].some((id) => heat.open.has(id));
    return `${capital(fire)} but ${still}${rises ? '' : ', so the heat goes nowhere'}.`;
  }
  const both = pumps.length > 0 ? `${capital(fire)} and ${run}` : capital(fire);
  return heat.open.size > 0 ? `${both}.` : `${both}, but every way is shut.`;
}

/** Where the heat of one loop goes: what works, what is heated, and at which valves the other ways are shut. */
function describeLoop(system: System, place: Place, loop: Tree, heat: Heat): string[] {
  const there = partsOf(loop);
  const takers = system.parts.filter((part) => part.kind.heat === 'takes' && there.includes(part));
  const sentences = [saysWork(loop, heat)];
  const heated = takers.filter(({ id }) => isHeated(id, heat)).map(({ short }) => say(short));
  if (heated.length > 0) sentences.push(`Heat goes to ${list(heated)}.`);

  const shut = takers.flatMap(({ id, short }) => {
    const valves = wayTo(loop.first, id).filter(({ part, entry, exit }) => {
      const passes = part.kind.passes?.(positionOf(system, part, place)) ?? [];
      return !passes.some((pair) => pair.includes(entry) && pair.includes(exit));
    });
    return valves.length > 0
      ? [`to ${say(short)} is shut at ${list(valves.map((v) => say(v.part.name)))}`]
      : [];
  });
  // With many ways, one sentence for all of them says more than a list.
  if (shut.length === takers.length && shut.length > MANY) sentences.push('Every way is shut.');
  else if (shut[0]) {
    const rest = shut.slice(1).map((way) => way.replace(' is shut', ''));
    sentences.push(`The way ${[shut[0], ...rest].join(', and ')}.`);
  }
  return sentences;
}

/**
 * Where the heat goes, in plain sentences, loop by loop, and which immersions heat. Throws an Error when the pipes
 * are not loops from a heat source and back.
 */
export function describeHeat(
  system: System,
  place: Place,
  fires: boolean,
  pumps: boolean,
  working: ReadonlySet<string> = allAtWork(system, fires, pumps),
): string {
  const loops = readLoops(system).flatMap((loop) =>
    describeLoop(system, place, loop, heatIn(system, place, loop, working)),
  );
  const immersions = system.parts
    .filter(({ kind }) => kind.heat === 'warms')
    .map(({ id, name }) => `The ${name.toLowerCase()} ${working.has(id) ? 'heats' : 'is off'}.`);
  return [...loops, ...immersions].join(' ');
}

/** The cut-out as the drawing of the plant takes it: nothing on a system that has none in its wiring. */
export function cutOutOf(settings: Readonly<Record<string, string>>): { cutOut?: 'healthy' | 'tripped' } {
  const setting = settings['cut-out'];
  return setting === undefined ? {} : { cutOut: setting === 'tripped' ? 'tripped' : 'healthy' };
}
