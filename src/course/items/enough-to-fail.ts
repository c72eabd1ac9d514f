import { evaluate, nextPlaces } from '../../engine/circuit/plain.ts';
import { failPlace, failSystem, failWires } from '../../engine/faults/apply.ts';
import { allFailures, type Failure, failureId, sayFailure } from '../../engine/faults/failure.ts';
import { demandOf, type Watch } from '../../engine/faults/hazard.ts';
import { uncontrolledHeat } from '../../engine/faults/hazards/uncontrolled-heat.ts';
import { makeTestBed } from '../../engine/faults/test-bed.ts';
import { isWide } from '../../engine/grade/size.ts';
import { bitsOf, type Config, partNamed, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import {
  decisiveLoad,
  explainDead,
  explainLive,
  explainValve,
  givingLoad,
} from '../../engine/rules/explain.ts';
import { type StateView, viewState } from '../../engine/rules/view.ts';
import { capital, list, sayPosition } from '../../engine/rules/words.ts';
import type { Layout, RightWiring } from '../layout.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';
import { sayInputs } from './sight.ts';

/** How many failures are offered. */
const OFFERED: Readonly<Record<Level, number>> = { 1: 3, 2: 4, 3: 5 };
/** The answer that no failure is enough. */
const NONE = 'none';

/** A failure, and a state in which it alone lets the heat in, where there is one. */
interface Tried {
  readonly failure: Failure;
  readonly struck: Config | undefined;
}

/** A store that must not overheat, with every single failure tried on it. */
interface Trial {
  readonly watch: Watch;
  readonly tried: readonly Tried[];
}

/** Right wirings are tried once each. */
const trials = new WeakMap<RightWiring, readonly Trial[]>();

function trialsOf({ system }: Layout, wiring: RightWiring): readonly Trial[] {
  const made =
    trials.get(wiring) ??
    uncontrolledHeat.watches(system).flatMap((watch) => tryAll(system, wiring.wires, watch));
  trials.set(wiring, made);
  return made;
}

/** None where the heat gets in with nothing failed at all. */
function tryAll(system: System, wires: readonly Wire[], watch: Watch): Trial[] {
  const strike = makeTestBed(system, wires, uncontrolledHeat, watch);
  if (strike([])) return [];
  return [
    { watch, tried: allFailures(system, wires).map((failure) => ({ failure, struck: strike([failure]) })) },
  ];
}

/** The failed system as it comes to rest with the store too hot and everything else calling. */
function pressed(
  system: System,
  wires: readonly Wire[],
  failures: readonly Failure[],
  watch: Watch,
): StateView {
  const all = Object.fromEntries(system.inputs.map(({ id, settings }) => [id, settings[1]]));
  const inputs = bitsOf(system, { ...all, ...watch.fixed });
  const failed = failSystem(system, failures);
  const whole = failWires(wires, failures);
  let place = failPlace(system, failures, 0);
  // Each valve moves at most from end to end; one that hunts is left where it is then.
  for (let moves = 0; moves < system.places; moves++) {
    const [next] = nextPlaces(failed, evaluate(failed, whole, { inputs, place }), place);
    if (next === undefined) break;
    place = next;
  }
  return viewState(failed, whole, { inputs, place });
}

const sayValves = ({ system, config }: StateView): string =>
  list(
    system.movers.flatMap(({ part }) => {
      const { id, kind } = system.parts[part] ?? {};
      return id !== undefined && kind?.passes ? [sayPosition(system, id, config)] : [];
    }),
  );

/** Why the store still stops heating, from the state in which everything else calls. */
function sayHolds(state: StateView, watch: Watch): string {
  const { system } = state;
  const demand = demandOf(system, watch);
  const coil = partNamed(system, demand.heats).name.toLowerCase();
  const valve = system.parts.findIndex(({ id }) => id === demand.valve);
  if (valve >= 0 && state.shut(demand)) return explainValve(state, valve).says;
  if (!state.open(demand)) return `No way is open to the ${coil}: ${sayValves(state)}.`;
  // An immersion heater warms by itself; a coil is warmed by what gives heat to the water.
  const warms = partNamed(system, demand.heats).kind.heat === 'warms';
  const source = system.parts.findIndex(
    ({ id, kind }, part) => (warms ? id === demand.heats : kind.heat === 'gives') && !state.working(part),
  );
  const load = source < 0 ? undefined : decisiveLoad(state, source, false);
  const name = system.parts[source]?.name.toLowerCase() ?? 'heat source';
  return load ? `The ${name} stays off. ${explainDead(state, load).says}` : `Nothing heats the ${coil}.`;
}

/** How the heat gets in all the same. */
function sayHeats(state: StateView, watch: Watch): string {
  const { system } = state;
  const demand = demandOf(system, watch);
  const coil = partNamed(system, demand.heats).name.toLowerCase();
  const load = givingLoad(state, demand);
  const valves = sayValves(state);
  const live = load
    ? ` ${capital(system.parts[load.part]?.name.toLowerCase() ?? '')}: ${explainLive(state, load).says}`
    : '';
  return `The ${coil} goes on taking heat.${valves ? ` ${capital(valves)}.` : ''}${live}`;
}

function wordsFor(
  layout: Layout,
  wires: readonly Wire[],
  failure: Failure,
  watch: Watch,
  struck?: Config,
): Words {
  const { system } = layout;
  const says = sayFailure(system, failure);
  const tooHot = list(
    Object.entries(watch.fixed).map(([input, setting]) => `${labelOf(system, input)} ${setting}`),
  );
  if (struck) {
    const whole = failWires(wires, [failure]);
    const state = viewState(failSystem(system, [failure]), whole, struck);
    return {
      cause: `${capital(says)}. That alone lets the heat in, with ${tooHot}. ${sayHeats(state, watch)}`,
      consequence: `The store goes past the point where every control should have stopped it, because ${says}. ${sayBeyond(system, watch)}`,
      look: `Set ${sayInputs(system, struck)}. Then ${says}: follow the live from there to what brings the heat.`,
      ...('wire' in failure ? { scene: { layout: layout.id, wires: whole, config: struck } } : {}),
    };
  }
  const state = pressed(system, wires, [failure], watch);
  return {
    cause: `${capital(says)}, and nothing else has failed. The heat still stops, with ${tooHot}. ${sayHolds(state, watch)}`,
    consequence: `It is a fault to put right, but not yet this danger. While ${says}, at least one more failure must come before the store overheats.`,
    look: `Set ${sayInputs(system, state.config)}. Then ${says}: find what still cuts off the heat.`,
  };
}

/** What stands outside the wiring: the store's own relief valve or vent. */
function sayBeyond(system: System, watch: Watch): string {
  const { heats } = demandOf(system, watch);
  const store = system.spec.stores?.find(({ heatSources }) => heatSources.some(({ part }) => part === heats));
  if (store && store.relief.length > 0) return uncontrolledHeat.beyond;
  return store?.unvented
    ? 'Outside the wiring only the limit of the heat source itself remains.'
    : 'Outside the wiring the limit of the heat source itself remains, and the open vent.';
}

const labelOf = (system: System, input: string): string =>
  (system.inputs.find(({ id }) => id === input)?.label ?? input).toLowerCase();

/** Which single failures alone let heat into a store that is already too hot. */
export const enoughToFail: Maker = {
  id: 'enough-to-fail',
  title: 'Which failure is enough?',
  needs: 'layout',
  produces: false,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    if (isWide(system)) return undefined;
    const wiring = random.pick(layout.right);
    const all = trialsOf(layout, wiring);
    if (all.length === 0) return undefined;
    const { watch, tried: every } = random.pick(all);
    const tried = random.shuffle(every);
    const enough = tried.filter(({ struck }) => struck);
    const held = tried.filter(({ struck }) => !struck);
    // Breaks of wires are many and mostly harmless here: parts come first.
    held.sort((a, b) => Number('wire' in a.failure) - Number('wire' in b.failure));
    const few = held.slice(0, Math.max(OFFERED[level], Math.floor(held.length / 2)));
    const count = Math.min(enough.length, random.int(level === 1 ? 2 : 3));
    const offered = [...enough.slice(0, count), ...random.shuffle(few).slice(0, OFFERED[level] - count)];
    if (offered.length < OFFERED[level]) return undefined;
    const demand = demandOf(system, watch);
    const tooHot = list(
      Object.entries(watch.fixed).map(([input, setting]) => `${labelOf(system, input)} ${setting}`),
    );
    const options: Option[] = [
      ...random.shuffle(offered).map(({ failure, struck }) => ({
        id: failureId(system, failure).replace(/[^\w-]+/g, '-'),
        says: capital(sayFailure(system, failure)),
        right: struck !== undefined,
        why: () => wordsFor(layout, wiring.wires, failure, watch, struck),
      })),
      {
        id: NONE,
        says: 'None of these alone',
        right: count === 0,
        why: () => wordsForNone(layout, wiring.wires, offered, watch),
      },
    ];
    const healthy = pressed(system, wiring.wires, [], watch);
    const [first] = offered;
    return {
      id: addressOf(task, seed, level),
      method: 'enough-to-fail',
      ask: `${layout.title}. The store is already too hot: ${tooHot}. Which of these failures, each on its own, lets heat go on into the ${partNamed(system, demand.heats).name.toLowerCase()}?`,
      scene: { layout: layout.id, wires: wiring.wires, config: healthy.config },
      form: pickForm(options, true),
      hints: [
        'For each failure ask two things. Can the heat source still run? Is a way still open to the store?',
        `With nothing failed: ${sayHolds(healthy, watch)}`,
        first ? wordsFor(layout, wiring.wires, first.failure, watch, first.struck).cause : '',
      ],
      steps: [
        `With nothing failed: ${sayHolds(healthy, watch)}`,
        ...offered.map(({ failure, struck }) => wordsFor(layout, wiring.wires, failure, watch, struck).cause),
        count === 0
          ? 'So none of these alone is enough.'
          : `So enough alone: ${list(offered.filter(({ struck }) => struck).map(({ failure }) => sayFailure(system, failure)))}.`,
      ],
      answer: rightPick(options),
      judge: judgePick(options, true),
    };
  },
};

/** What to say of “none”, chosen though one is enough, or left out though none is. */
function wordsForNone(
  layout: Layout,
  wires: readonly Wire[],
  offered: readonly Tried[],
  watch: Watch,
): Words {
  const { system } = layout;
  const enough = offered.find(({ struck }) => struck);
  if (enough) {
    const { cause, look } = wordsFor(layout, wires, enough.failure, watch, enough.struck);
    return {
      cause: `One of these is enough. ${cause}`,
      consequence: `You would trust the controls to stop the heat, though ${sayFailure(system, enough.failure)}.`,
      look,
    };
  }
  const healthy = pressed(system, wires, [], watch);
  return {
    cause: `None of the ${offered.length} failures is enough: with each of them something still stops the heat. ${sayHolds(healthy, watch)}`,
    consequence: `You would call ${list(offered.map(({ failure }) => sayFailure(system, failure)))} a danger alone, and look past the second fault that it takes.`,
    look: `Set ${sayInputs(system, healthy.config)}. Which control would have to fail as well?`,
  };
}
