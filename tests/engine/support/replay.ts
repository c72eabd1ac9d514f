import { configKey } from '../../../src/engine/explore/plain.ts';
import type { Found } from '../../../src/engine/grade/verdict.ts';
import { bitsOf, type Place, type System, settingsOf } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { must } from './must.ts';
import { look, restsAfter } from './places.ts';

/** Places passed on entering these settings at `start`, in any order of movement. */
function passed(system: System, wires: readonly Wire[], inputs: number, start: Place): Set<Place> {
  const places = new Set([start]);
  for (const place of places) {
    for (const to of look(system, wires, settingsOf(system, inputs), place).next) places.add(to);
  }
  return places;
}

/** All places the finding's state can be at when its switch moves are made one after the other from cold. */
export function follow(system: System, wires: readonly Wire[], steps: Found['steps']): Set<Place> {
  let settings = settingsOf(system, 0);
  let from = new Set<Place>([0]);
  let ahead = passed(system, wires, 0, 0);
  for (const step of steps) {
    const rests = [...from].flatMap((place) => restsAfter(system, wires, settings, place));
    settings = { ...settings, ...step };
    from = new Set(rests);
    ahead = new Set(rests.flatMap((place) => [...passed(system, wires, bitsOf(system, settings), place)]));
  }
  return ahead;
}

/** Problems with the walk a page would show: moves the plain evaluator does not make, or valves cut off on their way. */
export function walkProblems(system: System, wires: readonly Wire[], { way, config }: Found): string[] {
  const problems: string[] = [];
  if (way.length > 0 && (way[0]?.inputs !== 0 || way[0]?.places[0] !== 0))
    problems.push('does not begin cold');
  way.forEach(({ inputs, places }, k) => {
    const settings = settingsOf(system, inputs);
    places.slice(1).forEach((to, j) => {
      const { next } = look(system, wires, settings, must(places[j]));
      if (!next.includes(to)) problems.push(`step ${k}: no move from ${places[j]} to ${to}`);
    });
    const last = must(places.at(-1));
    const following = way[k + 1];
    if (following && look(system, wires, settings, last).next.length > 0)
      problems.push(`step ${k}: not at rest`);
    if (following && following.places[0] !== last) problems.push(`step ${k}: the next begins elsewhere`);
  });
  const end = way.at(-1);
  if (end && (end.inputs !== config.inputs || end.places.at(-1) !== config.place))
    problems.push('ends elsewhere');
  return problems;
}

/**
 * The fewest switches that must be moved from cold to meet each state, by its key (see `configKey`), found by a search
 * of its own: breadth first over (settings, resting place), where several switches may be moved before the valves stir.
 */
export function fewestMoves(system: System, wires: readonly Wire[]): Map<number, number> {
  const fewest = new Map<number, number>();
  const seen = new Set<number>();
  let level: [inputs: number, place: Place][] = [[0, 0]];
  for (let moves = 0; level.length > 0; moves++) {
    const after: [number, Place][] = [];
    for (const [inputs, place] of level) {
      const key = configKey(system, { inputs, place });
      if (seen.has(key)) continue;
      seen.add(key);
      for (const at of passed(system, wires, inputs, place)) {
        const met = configKey(system, { inputs, place: at });
        if (!fewest.has(met)) fewest.set(met, moves);
      }
      for (const start of [place, ...restsAfter(system, wires, settingsOf(system, inputs), place)]) {
        for (const k of system.inputs.keys()) after.push([inputs ^ (1 << k), start]);
      }
    }
    level = after;
  }
  return fewest;
}

/** How many switches the steps of a finding move. */
export const movesIn = (steps: Found['steps']): number =>
  steps.reduce((sum, step) => sum + Object.keys(step).length, 0);
