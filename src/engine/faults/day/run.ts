import type { System } from '../../model/system.ts';
import type { Wire } from '../../model/wiring.ts';
import { heatGone, makePlant, reliefFlow, startPlant, stepPlant, storedHeat } from '../../plant/store.ts';
import { failPlace } from '../apply.ts';
import type { Failure } from '../failure.ts';
import { burn, type Change, feel, startControls } from './controls.ts';
import { type Action, makeElectrics } from './electrics.ts';
import { type DayEvent, type EventKind, sayChange, sayDraw, sayProgrammer, sayStruck } from './events.ts';
import type { DayRun, Sample } from './record.ts';
import { drawnAt, drawsBeginning, isOn, secondsIn, secondsOfChange } from './schedule.ts';
import { inputsFor, type Sense, sensesOf } from './senses.ts';
import { type DaySettings, ORDINARY_DAY } from './settings.ts';
import { nextArrival, travel, valvesAt } from './valves.ts';

/** The longest step, seconds: a boiler at full power warms its own water by 0.8 K in it. */
const LONGEST_STEP = 5;
const SAMPLE_SECONDS = 60;
/** How long after a trip heat that still goes in counts as uncontrolled: any spring has shut its valve by then. */
const TRIP_GRACE_SECONDS = 60;

/**
 * Hours of a wired system and its cylinder together. The wiring decides boiler, pump and valves at each instant; the
 * lumped plant gives the temperatures, which set thermostat and cut-out in turn. Failures strike at `settings.failAt`.
 * Expansion relief, gravity circulation with the pump off, and heat held in the radiators are not modelled.
 * @param wires must name terminals of the system
 */
export function runDay(
  system: System,
  wires: readonly Wire[],
  settings: DaySettings = ORDINARY_DAY,
  failures: readonly Failure[] = [],
): DayRun {
  const plant = makePlant(settings);
  const state = startPlant(settings.startStore, settings.startFlow);
  const controls = startControls(settings);
  const senses = sensesOf(system);
  const now: Record<Sense, boolean> = {
    supply: true,
    hotWater: false,
    heating: false,
    room: false,
    store: controls.calling,
    cutOut: false,
  };
  const samples: Sample[] = [];
  const events: DayEvent[] = [];
  const startedWith = storedHeat(plant, state);
  const end = secondsIn(settings.hours);
  const stops = [...secondsOfChange(settings), end];
  const uncontrolledFire = failures.some(
    (failure) => 'part' in failure && failure.spec.needs && system.parts[failure.part]?.kind.heat === 'gives',
  );

  let seconds = 0;
  let valves = valvesAt(system, 0);
  let electrics = makeElectrics(system, wires, []);
  let struck: readonly Failure[] = [];
  let sound = true;
  let controlled = true;
  let drawn = 0;
  let trippedAt = Number.POSITIVE_INFINITY;
  let relieved = 0;
  let hottest = state.store;
  const told = new Set<Change>();

  const tell = (kind: EventKind, says: string) => events.push({ seconds, kind, says });
  const tellChange = (change: Change) => {
    if (change === 'trips') trippedAt = seconds;
    // A limit that resets itself comes and goes for hours: told once.
    if (change.startsWith('limit') && told.has('limit')) return;
    told.add(change);
    const { kind, says } = sayChange(system, struck, settings, change);
    tell(kind, says);
  };

  function strike(): void {
    sound = false;
    const says = sayStruck(system, failures, settings);
    if (says === '') return;
    struck = failures;
    controlled = !(settings.flowFails || uncontrolledFire);
    electrics = makeElectrics(system, wires, failures);
    valves = valvesAt(system, failPlace(system, failures, valves.place));
    tell('failure', says);
  }

  function readClock(): void {
    for (const [sense, spans, channel] of [
      ['hotWater', settings.hotWater, 'hot water'],
      ['heating', settings.heating, 'heating'],
    ] as const) {
      const on = isOn(spans, seconds);
      if (on !== now[sense]) tell('programmer', sayProgrammer(channel, on));
      now[sense] = on;
    }
    now.room = isOn(settings.roomCalls, seconds);
    const litres = drawsBeginning(settings, seconds);
    if (litres > 0) tell('draw', sayDraw(litres));
    drawn = drawnAt(settings, seconds);
    if (sound && seconds >= secondsIn(settings.failAt)) strike();
  }

  function act(): Action {
    now.store = controls.calling;
    now.cutOut = controls.tripped;
    const action = electrics(inputsFor(senses, now), valves.place);
    if (!action.short || !now.supply) return action;
    now.supply = false;
    tell('fuse', 'Line meets neutral or earth: the fuse blows, and everything stops.');
    return act();
  }

  const sample = ({ pumps }: Action) =>
    samples.push({
      seconds,
      store: state.store,
      flow: state.primary,
      boiler: controls.burning,
      pump: pumps,
      place: valves.place,
    });

  let stop = 0;
  let nextSample = 0;
  for (;;) {
    if (seconds >= stops[stop]!) {
      if (seconds >= end) break;
      readClock();
      stop++;
    }
    const action = act();
    const burner = burn(controls, settings, action.fires, controlled, state.primary);
    if (seconds >= nextSample) {
      sample(action);
      nextSample += SAMPLE_SECONDS;
    }
    const heats = action.fires && action.coil > 0 && !controls.limited;
    if (heats && seconds >= trippedAt + TRIP_GRACE_SECONDS) {
      trippedAt = Number.POSITIVE_INFINITY;
      tell('uncontrolled', 'The cut-out has felt its trip point, and still the boiler heats the store.');
    }
    const until = Math.min(stops[stop]!, nextSample);
    const step = Math.min(
      LONGEST_STEP,
      until - seconds,
      nextArrival(system, valves, action.directions, settings),
    );
    stepPlant(plant, { burner, coil: action.coil, radiators: action.radiators, drawn }, state, step);
    travel(system, valves, action.directions, settings, step);
    seconds = step === until - seconds ? until : seconds + step;
    relieved += reliefFlow(plant, state.store) * step;
    hottest = Math.max(hottest, state.store);
    feel(controls, settings, state.store, state.primary, tellChange);
  }
  sample(act());
  const heat = { ...heatGone(state), stored: storedHeat(plant, state) - startedWith };
  return { settings, samples, events, heat, relieved, hottest };
}
