import { atWork, evaluate, joinedTo, nextPlaces, wireJoints } from '../../engine/circuit/plain.ts';
import {
  alternatives,
  bitsOf,
  type Demand,
  type Place,
  partNamed,
  type Settings,
} from '../../engine/model/system.ts';
import { openPaths } from '../../engine/plant/paths.ts';
import { viewState } from '../../engine/rules/view.ts';
import { isAre, list, sayPosition } from '../../engine/rules/words.ts';
import type { Layout } from '../layout.ts';

/** Something that can be seen or measured on a job, worked out from the layout itself. */
export interface Clue {
  readonly id: string;
  /** Where to look to see it. */
  readonly look: string;
  /** What it shows, in a sentence; undefined where the layout has nothing of the kind. */
  readonly see: (layout: Layout) => string | undefined;
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'];

const wiresOf = ({ right }: Layout) => right[0]?.wires ?? [];

/** The inputs with the supplies on and these settings made. */
function set({ system }: Layout, ...settings: readonly Settings[]): number {
  const supplies = Object.fromEntries(
    system.supplies.flatMap(({ input }) => {
      const found = system.inputs[input];
      return found ? [[found.id, found.settings[1]]] : [];
    }),
  );
  return bitsOf(system, Object.assign({}, supplies, ...settings));
}

/** Where the valves come to rest from a place; which of several goes first does not matter to a clue. */
function settle(layout: Layout, inputs: number, from: Place): Place {
  let place = from;
  for (let moves = 0; moves < layout.system.places * 2; moves++) {
    const live = evaluate(layout.system, wiresOf(layout), { inputs, place });
    const [next] = nextPlaces(layout.system, live, place);
    if (next === undefined) return place;
    place = next;
  }
  return place;
}

const callOf = ({ when }: Demand): Settings => alternatives(when)[0] ?? {};

const demandFor = ({ system }: Layout, what: 'water' | 'rooms'): Demand | undefined =>
  system.spec.demands.find(({ heats, coldWhenNotCalled }) => {
    const stores = (system.spec.stores ?? []).some(({ heatSources }) =>
      heatSources.some(({ part }) => part === heats),
    );
    return what === 'water'
      ? stores
      : !stores && (coldWhenNotCalled === true || partNamed(system, heats).kind.kind === 'radiators');
  });

/** The valves and other movers that water goes through. */
const valvesOf = ({ system }: Layout) => system.parts.filter(({ kind, mover }) => mover >= 0 && kind.passes);

function firesFirst(layout: Layout, what: 'water' | 'rooms', called: string): string | undefined {
  const demand = demandFor(layout, what);
  if (!demand) return undefined;
  const { system } = layout;
  const inputs = set(layout, callOf(demand));
  const fires = (place: Place) =>
    atWork(system, evaluate(system, wiresOf(layout), { inputs, place }), 'fires');
  if (fires(0))
    return `From rest, ${called} alone is called. Heat is asked for at once, before any valve has moved.`;
  const place = settle(layout, inputs, 0);
  return fires(place)
    ? `From rest, ${called} alone is called. Heat is asked for only after something has moved.`
    : `From rest, ${called} alone is called. No boiler fires at all.`;
}

export const clues: readonly Clue[] = [
  {
    id: 'valves',
    look: 'Count the valves on the pipes, and read what kind each is.',
    see: (layout) => {
      const titles = valvesOf(layout).map(({ kind }) => kind.title.toLowerCase());
      if (titles.length === 0) return 'There is no motorised valve.';
      const kinds = [...new Set(titles)].map((title) => {
        const count = titles.filter((other) => other === title).length;
        return `${NUMBERS[count] ?? count} ${title}${count > 1 ? 's' : ''}`;
      });
      return `On the pipes there ${titles.length > 1 ? 'are' : 'is'} ${list(kinds)}.`;
    },
  },
  {
    id: 'at-rest',
    look: 'Switch the supply off, wait for the springs, and see which pipes are open.',
    see: ({ system }) => {
      const open = [...openPaths(system, 0)].map((id) => `the ${partNamed(system, id).name.toLowerCase()}`);
      return open.length > 0
        ? `With the supply off for a while, a way is open to ${list(open)}.`
        : 'With the supply off for a while, no way is open to anything.';
    },
  },
  {
    id: 'water-fires',
    look: 'Call hot water alone, and watch whether the boiler waits for a valve.',
    see: (layout) => firesFirst(layout, 'water', 'hot water'),
  },
  {
    id: 'rooms-fire',
    look: 'Call heating alone, and watch whether the boiler waits for a valve.',
    see: (layout) => firesFirst(layout, 'rooms', 'heating'),
  },
  {
    id: 'both',
    look: 'Call hot water and heating together, and feel which pipes get warm.',
    see: (layout) => {
      const [water, rooms] = [demandFor(layout, 'water'), demandFor(layout, 'rooms')];
      if (!water || !rooms) return undefined;
      const { system } = layout;
      const inputs = set(layout, callOf(water), callOf(rooms));
      const state = viewState(system, wiresOf(layout), { inputs, place: settle(layout, inputs, 0) });
      const warm = [water, rooms]
        .filter(state.heated)
        .map(({ heats }) => `the ${partNamed(system, heats).name.toLowerCase()}`);
      const get = warm.length > 1 || isAre(warm[0] ?? '') === 'are' ? 'get' : 'gets';
      return warm.length > 0
        ? `With hot water and heating both called, ${list(warm)} ${get} heat${warm.length === 1 ? ' and nothing else does' : ''}.`
        : 'With hot water and heating both called, nothing gets heat.';
    },
  },
  {
    id: 'after-heating',
    look: 'Run heating alone, then end the call with the supply on, and see whether every valve goes back.',
    see: (layout) => {
      const rooms = demandFor(layout, 'rooms');
      if (!rooms || valvesOf(layout).length === 0) return undefined;
      const moved = settle(layout, set(layout, callOf(rooms)), 0);
      const place = settle(layout, set(layout), moved);
      const away = valvesOf(layout).filter(({ id }) => {
        const at = (where: Place) => sayPosition(layout.system, id, { inputs: 0, place: where });
        return at(place) !== at(0);
      });
      return away.length === 0
        ? 'After heating alone, with the supply still on, every valve goes back to rest.'
        : `After heating alone, with the supply still on, ${list(away.map(({ id }) => sayPosition(layout.system, id, { inputs: 0, place })))}.`;
    },
  },
  {
    id: 'off-terminal',
    look: 'Take the cover off the programmer, supply off and proved dead, and see whether a core is in its hot-water-off terminal.',
    see: (layout) => {
      const off = layout.system.nodes
        .slice(0, layout.system.terminals)
        .find((node) => node.endsWith('/HW-OFF'));
      if (off === undefined) return undefined;
      return wiresOf(layout).some((wire) => wire.includes(off))
        ? 'A core is landed on hot-water-off at the programmer.'
        : 'Nothing is landed on hot-water-off at the programmer.';
    },
  },
  {
    id: 'grey',
    look: 'Test grey at the valve to neutral while hot water is called and met.',
    see: (layout) => {
      const water = demandFor(layout, 'water');
      const { system } = layout;
      const greys = system.nodes.slice(0, system.terminals).filter((node) => node.endsWith('/grey'));
      if (!water || greys.length === 0) return undefined;
      const inputs = set(layout, callOf(water));
      const { line } = evaluate(system, wiresOf(layout), { inputs, place: settle(layout, inputs, 0) });
      const live = greys.filter((node) => line[system.nodeOf.get(node) ?? -1]).length;
      if (live === greys.length)
        return 'While hot water alone runs, every grey core of a valve reads 230 V to neutral.';
      return live === 0
        ? 'While hot water alone runs, every grey core of a valve reads 0 V to neutral.'
        : 'While hot water alone runs, one grey core of a valve reads 230 V to neutral and another 0 V.';
    },
  },
  {
    id: 'cut-out',
    look: 'Look at the store: its label, its safety valve, and whether a cut-out with a hand reset is wired in.',
    see: ({ system }) => {
      const [store] = system.spec.stores ?? [];
      if (!store) return 'There is no hot water store.';
      const cutOuts = store.heatSources.flatMap((source) => source.cutOuts).length;
      const what =
        cutOuts === 0 ? 'no cut-out' : `${NUMBERS[cutOuts] ?? cutOuts} cut-out${cutOuts > 1 ? 's' : ''}`;
      return `The ${store.says} is ${store.unvented ? 'unvented' : 'vented'}, with ${what} wired in.`;
    },
  },
  {
    id: 'pump-feed',
    look: 'Follow the live of the pump: from the strip, or from a terminal of the boiler made for it?',
    see: (layout) => {
      const { system } = layout;
      const pump = system.parts.find(({ kind }) => kind.kind === 'pump');
      if (!pump) return undefined;
      const joined = joinedTo(wireJoints(system, wiresOf(layout)), system.nodeOf.get(`${pump.id}/L`) ?? 0);
      const from = system.parts.find(
        ({ id, kind }) =>
          kind.work?.does === 'fires' &&
          kind.terminals.some((terminal) => joined[system.nodeOf.get(`${id}/${terminal.id}`) ?? -1]),
      );
      const terminal = from?.kind.terminals.find(
        ({ id }) => joined[system.nodeOf.get(`${from.id}/${id}`) ?? -1],
      );
      if (!from || !terminal) return 'The live of the pump is joined to no terminal of a boiler.';
      return terminal.id === 'SL'
        ? `The pump and the switched line of the ${from.name.toLowerCase()} share one live.`
        : `The pump is fed from terminal ${terminal.id} of the ${from.name.toLowerCase()} alone.`;
    },
  },
];
