import {
  bitsOf,
  type Config,
  type InputBits,
  type Place,
  type Settings,
  type System,
  settingsOf,
} from '../../engine/model/system.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { asksOf, lineEnd } from '../circuit/call-route.ts';
import { heatedIn, isStray, neededBy } from '../circuit/heat.ts';
import { callOf, pickInputs, type Standing, settled, stand, suppliesOn } from '../circuit/standing.ts';
import { say, sayStopsOn, sayValves, sayWhyLive, wayTo } from '../circuit/words.ts';
import type { Answer, Judgement, Note } from '../item.ts';
import { makeRandom, type Random } from '../random.ts';
import { restsFrom } from '../rests.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { type Sight, sayInputs, saySight, see, unlike } from './sight.ts';
import { statesOf } from './states.ts';

/** Of some settings those that others share, or do not share, in words. */
const settingsThat = (system: System, share: boolean, settings: Settings, others: Settings): string[] =>
  system.inputs.flatMap(({ id, label }) =>
    (settings[id] === others[id]) === share ? [`${label.toLowerCase()} ${settings[id] ?? ''}`] : [],
  );

/** Notes on controls and settings that the form does not offer. */
const strangersIn = (system: System, settings: Settings): Note[] =>
  Object.entries(settings).flatMap(([id, setting]) =>
    system.inputs.some((input) => input.id === id && input.settings.includes(setting))
      ? []
      : [
          {
            about: id,
            cause: `“${id}” at “${setting}” is not one of the controls as they can be set here.`,
            consequence: `Nothing in this circuit answers to “${id}” at “${setting}”.`,
            look: `Leave “${id}” out, and set the controls of the list.`,
          },
        ],
  );

/** The ends where the parts at work in a state are asked to work. */
const askedAt = ({ system, live }: Standing): number[] =>
  system.parts.flatMap(({ kind }, part) => {
    const loads = kind.work ? asksOf(system, part).filter((l) => live.works[l]) : [];
    return loads.flatMap((l) => {
      const load = system.loads[l];
      return load ? [lineEnd(live, load.a, load.b)] : [];
    });
  });

/**
 * Settings to start from: on level 1 cold, or with one control set; on level 2 those of a call, where there are
 * several; on level 3 any.
 */
function startFor(system: System, random: Random, level: Level): InputBits {
  const on = bitsOf(system, suppliesOn(system));
  const { demands } = system.spec;
  if (level === 3) return pickInputs(system, random, level);
  if (level === 2 && demands.length > 1) return callOf(system, random.pick(demands));
  return random.int(2) === 0 ? 0 : on | (1 << random.int(system.inputs.length));
}

/** Settings that still do what others do, with as few as can be away from those of the start. */
function fewest(
  system: System,
  aim: InputBits,
  start: InputBits,
  does: (set: InputBits) => boolean,
): InputBits {
  const less = system.inputs
    .map((_, k) => aim ^ ((aim ^ start) & (1 << k)))
    .find((set) => set !== aim && does(set));
  return less === undefined ? aim : fewest(system, less, start, does);
}

/** Set the controls so that something happens. */
export const setSwitches: Maker = {
  id: 'set-switches',
  title: 'Set the controls so that it happens',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const { demands } = system.spec;
    if (demands.length === 0) return undefined;
    const wires = random.pick(layout.right).wires;
    const states = statesOf(system, wires);
    const startInputs = startFor(system, random, states ? level : 1);
    const startPlace = settled(system, wires, startInputs, 0);
    if (startPlace === undefined) return undefined;
    const start: Config = { inputs: startInputs, place: startPlace };
    const aim = states ? pickInputs(system, random, level) : callOf(system, random.pick(demands));
    const end = settled(system, wires, aim, start.place);
    if (end === undefined) return undefined;
    const valves = level === 3;
    const look = (config: Config): Sight => {
      const sight = see(system, wires, config);
      return valves ? sight : { ...sight, stands: [] };
    };
    const goal = look({ inputs: aim, place: end });
    const wanted = saySight(goal);
    /** The first place of rest in which settings give something else; undefined when they never do. */
    const amiss = (set: InputBits, rests: readonly Place[]): Place | undefined =>
      rests.find((at) => saySight(look({ inputs: set, place: at })) !== wanted);
    const comes = (set: InputBits): boolean => {
      const rests = restsFrom(system, wires, set, [start.place]);
      return rests.length > 0 && amiss(set, rests) === undefined;
    };
    // Something must happen, and not by itself.
    if (wanted === saySight(look(start)) || goal.warm === 'Nothing gets heat.') return undefined;
    if (isStray(system, wires, { inputs: aim, place: end })) return undefined;
    // What need not be changed is left as it stands: no hint shall tell a change that does nothing.
    const inputs = fewest(system, aim, start.inputs, comes);
    const place = settled(system, wires, inputs, start.place);
    if (place === undefined) return undefined;
    const from = settingsOf(system, start.inputs);
    const reached = stand(layout, wires, { inputs, place });
    const asked = [...new Set(askedAt(reached))];
    const ways = asked.map((node) => wayTo(reached, node));
    const wantedHeats = heatedIn(system, wires, { inputs, place });
    const judge = (given: Answer): Judgement => {
      const wished = given.kind === 'set' ? given.settings : {};
      const strangers = strangersIn(system, wished);
      if (strangers.length > 0) return { right: false, notes: strangers };
      const settings = { ...from, ...wished };
      const set = bitsOf(system, settings);
      const rests = restsFrom(system, wires, set, [start.place]);
      const off = amiss(set, rests);
      if (rests.length > 0 && off === undefined) return { right: true, notes: [] };
      const config = { inputs: set, place: off ?? start.place };
      const standing = stand(layout, wires, config);
      const got = look(config);
      const missing = unlike(goal, got);
      const stops = ways.map((way) => sayStopsOn(standing, way)).find((says) => says !== '') ?? '';
      const heats = heatedIn(system, wires, config);
      const other = system.spec.demands.find(
        (demand) => wantedHeats.includes(demand) !== heats.includes(demand),
      );
      const yours = settingsThat(system, false, settings, from);
      const all = list(settingsThat(system, true, settings, settings));
      return {
        right: false,
        notes: [
          {
            about: '',
            cause: say(
              yours.length > 0 ? `You go to ${list(yours)}.` : 'You leave everything as it was.',
              `Then this happens: ${saySight(got)}`,
              missing.length > 0 ? stops : '',
            ),
            consequence:
              missing.length > 0
                ? `What was asked for does not come: ${missing.join(' ')}`
                : `More happens than was asked for: ${unlike(got, goal).join(' ')}`,
            look: other
              ? `${capital(other.says)} ${heats.includes(other) ? 'is met and was not asked for' : 'was asked for and is not met'}. Look at what it depends on: ${list(neededBy(system, other, settings))}.`
              : `The right things get heat, but not all is as asked. Go through it control by control: ${all}.`,
            scene: { layout: layout.id, wires, config },
          },
        ],
      };
    };
    const target = settingsOf(system, inputs);
    const changes = settingsThat(system, false, target, from);
    const [kept] = settingsThat(system, true, target, from);
    return {
      id: addressOf(task, seed, level),
      method: 'set-switches',
      ask: say(
        `${layout.title}. Now: ${sayInputs(system, start)}.`,
        sayValves(stand(layout, wires, start)),
        `Set the controls so that this happens: ${wanted}`,
      ),
      scene: { layout: layout.id, wires, config: start },
      form: {
        kind: 'set',
        controls: system.inputs.map(({ id, label, settings }) => ({ id, label, settings })),
        start: from,
      },
      hints: [
        `Which calls are met when this happens? ${goal.warm}`,
        'A call needs all of its controls: time switch on, thermostat calling, nothing tripped. What is not asked for must not be called.',
        // Where one change is all there is to it, what may stay is told instead.
        changes.length > 1 || kept === undefined
          ? `One thing to change: ${changes[0] ?? ''}.`
          : `One thing to leave as it is: ${kept}.`,
      ],
      steps: [
        `Wanted: ${wanted}`,
        `From where it stands, go to ${list(changes)}.`,
        ...asked.map((node) => sayWhyLive(reached, node)),
        `So set it like this: ${sayInputs(system, { inputs })}.`,
      ],
      answer: { kind: 'set', settings: target },
      judge,
    };
  },
};
