import { atWork, evaluate, nextPlaces, partWorks } from '../../engine/circuit/plain.ts';
import {
  alternatives,
  bitsOf,
  type Demand,
  type Place,
  type Settings,
  type System,
} from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { cutOutOf, heatIn, isHeated } from '../plant/heat.ts';
import { readLoops } from '../plant/tree.ts';
import { canLayOut } from './can-lay-out.ts';

/** A state worth a picture: what is called, and what the wired system does about it from cold. */
export interface Scene {
  readonly title: string;
  readonly place: Place;
  readonly fires: boolean;
  readonly pumps: boolean;
  /** Ids of the parts at work. */
  readonly working: ReadonlySet<string>;
  readonly cutOut?: 'healthy' | 'tripped';
}

/** More calls than this are not drawn one by one. */
const MOST_CALLS = 3;

const firstOf = ({ when }: Demand): Settings => alternatives(when)[0] ?? {};

/** Lets the valves move, one at a time, until all rest: a right wiring comes to rest. */
function settle(
  system: System,
  wires: readonly Wire[],
  inputs: number,
): { place: Place; live: ReturnType<typeof evaluate> } {
  let place: Place = 0;
  for (let moves = 0; ; moves++) {
    const live = evaluate(system, wires, { inputs, place });
    const next = nextPlaces(system, live, place)[0];
    if (next === undefined || moves > 2 * system.places) return { place, live };
    place = next;
  }
}

/** Whether the drawing of the pipes shows the heat where the call wants it: water that moves by gravity it cannot show. */
function isShown(system: System, { place, working }: Scene, { heats }: Demand): boolean {
  return (
    working.has(heats) ||
    readLoops(system).some((loop) => isHeated(heats, heatIn(system, place, loop, working)))
  );
}

/**
 * What a right wiring does when nothing is called, for each call alone, and for all calls together. Empty where the
 * pipes cannot be drawn, or where a drawing would show less heat than there is.
 */
export function scenes(system: System, wires: readonly Wire[]): Scene[] {
  if (!canLayOut(system)) return [];
  const { demands } = system.spec;
  const supplied: Record<string, string> = {};
  for (const { input } of system.supplies) {
    const switched = system.inputs[input];
    if (switched) supplied[switched.id] = switched.settings[1];
  }
  const scene = (title: string, called: readonly Demand[]): Scene => {
    const settings = { ...supplied, ...Object.assign({}, ...called.map(firstOf)) };
    const { place, live } = settle(system, wires, bitsOf(system, settings));
    const hasCutOut = system.inputs.some(({ id }) => id === 'cut-out');
    return {
      title,
      place,
      fires: atWork(system, live, 'fires'),
      pumps: atWork(system, live, 'pumps'),
      working: new Set(
        system.parts.flatMap(({ id, kind }, part) =>
          kind.work && partWorks(system, live, part) ? [id] : [],
        ),
      ),
      ...(hasCutOut && cutOutOf({ 'cut-out': 'healthy' })),
    };
  };
  const alone = demands.length <= MOST_CALLS ? demands : [];
  const single = alone.map((demand) => scene(`${capital(demand.says)} is called`, [demand]));
  const all = scene(`${capital(list(demands.map(({ says }) => says)))} are called`, demands);
  const isTrue =
    alone.length > 0
      ? alone.every((demand, k) => single[k] && isShown(system, single[k], demand))
      : demands.every((demand) => demand.yields !== undefined || isShown(system, all, demand));
  if (!isTrue) return [];
  return [scene('Nothing is called', []), ...single, ...(demands.length > 1 ? [all] : [])];
}
