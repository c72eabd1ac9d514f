import {
  bitsOf,
  type Config,
  type InputBits,
  type Settings,
  type System,
  settingsOf,
} from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';
import { asksOf, lineEnd } from '../circuit/call-route.ts';
import { callOf, pickInputs, type Standing, settled, stand, suppliesOn } from '../circuit/standing.ts';
import { say, sayStopsOn, sayValves, sayWhyLive, wayTo } from '../circuit/words.ts';
import type { Answer, Judgement } from '../item.ts';
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
    const inputs = states ? pickInputs(system, random, level) : callOf(system, random.pick(demands));
    const place = settled(system, wires, inputs, start.place);
    if (place === undefined) return undefined;
    const valves = level === 3;
    const look = (config: Config): Sight => {
      const sight = see(system, wires, config);
      return valves ? sight : { ...sight, stands: [] };
    };
    const goal = look({ inputs, place });
    const wanted = saySight(goal);
    // Something must happen, and not by itself.
    if (wanted === saySight(look(start)) || goal.warm === 'Nothing gets heat.') return undefined;
    const from = settingsOf(system, start.inputs);
    const reached = stand(layout, wires, { inputs, place });
    const asked = [...new Set(askedAt(reached))];
    const ways = asked.map((node) => wayTo(reached, node));
    const judge = (given: Answer): Judgement => {
      const settings = { ...from, ...(given.kind === 'set' ? given.settings : {}) };
      const set = bitsOf(system, settings);
      const rests = restsFrom(system, wires, set, [start.place]);
      const off = rests.find((at) => saySight(look({ inputs: set, place: at })) !== wanted);
      if (rests.length > 0 && off === undefined) return { right: true, notes: [] };
      const config = { inputs: set, place: off ?? start.place };
      const standing = stand(layout, wires, config);
      const got = look(config);
      const missing = unlike(goal, got);
      const asleep = system.spec.demands.find(
        ({ heats }) =>
          wanted.toLowerCase().includes((system.spec.parts[heats]?.name ?? heats).toLowerCase()) &&
          missing.includes(goal.warm),
      );
      const settingsNow = sayInputs(system, config);
      const stops = ways.map((way) => sayStopsOn(standing, way)).find((says) => says !== '') ?? '';
      return {
        right: false,
        notes: [
          {
            about: '',
            cause: say(
              `With ${settingsNow}, this happens: ${saySight(got)}`,
              missing.length > 0 ? stops : '',
            ),
            consequence:
              missing.length > 0
                ? `What was asked for does not come: ${missing.join(' ')}`
                : `More happens than was asked for: ${unlike(got, goal).join(' ')}`,
            look: asleep
              ? `Ask what ${asleep.says} needs before it is called, and compare it with your settings: ${settingsNow}.`
              : `Go through your settings one by one: ${settingsNow}. Which of them calls for something?`,
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
        'A call needs its time switch on, its thermostat calling, and nothing tripped. What is not called must not be met.',
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
