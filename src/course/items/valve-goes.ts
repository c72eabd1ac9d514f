import { directions, evaluate } from '../../engine/circuit/plain.ts';
import { positionIndex, type System, settingsOf } from '../../engine/model/system.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';
import { pickState, settled, stand } from '../circuit/standing.ts';
import { say, sayValves, sayWhyDead, sayWhyLive } from '../circuit/words.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';
import { sayInputs } from './sight.ts';

/** Terminals from which line can get to what drives or holds a mechanism, whichever way its own contacts stand. */
function motorCores(system: System, m: number): readonly number[] {
  const { part = -1, drives = [], hold = -1 } = system.movers[m] ?? {};
  const ends = [...drives, hold].flatMap((l) => {
    const load = system.loads[l];
    return load ? [load.a, load.b] : [];
  });
  const reached = new Set(ends);
  for (const node of reached)
    for (const contact of system.contacts) {
      if (contact.part !== part) continue;
      if (contact.a === node) reached.add(contact.b);
      if (contact.b === node) reached.add(contact.a);
    }
  const { id, kind } = system.parts[part] ?? {};
  return (kind?.terminals ?? []).flatMap((terminal) => {
    const node = system.nodeOf.get(`${id}/${terminal.id}`) ?? -1;
    return reached.has(node) && terminal.duty !== 'neutral' && terminal.duty !== 'earth' ? [node] : [];
  });
}

/** Where does a valve come to rest, from where it stands, after a change? */
export const valveGoes: Maker = {
  id: 'valve-goes',
  title: 'Where does the valve come to rest?',
  needs: 'layout',
  produces: false,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const wires = random.pick(layout.right).wires;
    const valves = system.movers.flatMap(({ part }, m) => (system.parts[part]?.kind.passes ? [m] : []));
    const before = pickState(layout, wires, random, level === 1 ? 2 : level);
    if (!before || valves.length === 0) return undefined;
    // Valves that stop in three places are the ones to ask about.
    const m = random.pick(
      valves.some((v) => (system.movers[v]?.positions.length ?? 0) > 2)
        ? valves.filter((v) => (system.movers[v]?.positions.length ?? 0) > 2)
        : valves,
    );
    const mover = system.movers[m];
    const part = system.parts[mover?.part ?? -1];
    if (!mover || !part) return undefined;
    const supplies = system.supplies.map(({ input }) => input);
    const free = system.inputs.flatMap((_, k) => (supplies.includes(k) && random.int(4) > 0 ? [] : [k]));
    const flips = random.shuffle(free).slice(0, level);
    const inputs = flips.reduce((bits, k) => bits ^ (1 << k), before.config.inputs);
    const place = settled(system, wires, inputs, before.config.place);
    if (place === undefined) return undefined;
    const was = positionIndex(mover, before.config.place);
    const now = positionIndex(mover, place);
    // Half the questions are about a valve that moves.
    if (was === now && random.int(3) > 0) return undefined;
    const name = part.name.toLowerCase();
    const words = (at: number) =>
      system.spec.parts[part.id]?.positions?.[mover.positions[at] ?? ''] ?? mover.positions[at] ?? '';
    const after = stand(layout, wires, { inputs, place });
    const cores = motorCores(system, m);
    const feeds = cores.map((node) =>
      after.live.line[node] ? sayWhyLive(after, node) : sayWhyDead(after, node),
    );
    const change = list(
      flips.map((k) => {
        const input = system.inputs[k];
        return `${input?.label.toLowerCase()} goes to ${settingsOf(system, inputs)[input?.id ?? '']}`;
      }),
    );
    // Only some valves can be held between their ends.
    const holds = mover.hold >= 0;
    const mains = holds ? 'full mains, half mains or nothing' : 'mains or nothing';
    const why = (at: number): Words => {
      const there = place + (at - now) * mover.stride;
      const way = directions(system, evaluate(system, wires, { inputs, place: there }), there)[m] ?? 0;
      const lead = cores.map((node) => `${sayNode(system, node)} ${after.live.line[node] ? 'live' : 'dead'}`);
      return {
        cause:
          way > 0
            ? `Standing ${words(at)}, the ${name} is fed in full: its motor drives it on. It does not stop there.`
            : way < 0
              ? `Standing ${words(at)}, nothing holds the ${name}: its spring takes it back. It does not stop there.`
              : `Standing ${words(at)}, the ${name} would stay. But it starts ${words(was)} and does not get there. It ends up ${words(now)}.`,
        consequence: `You would expect water to go as if the ${name} were ${words(at)}. In truth it is ${words(now)}.`,
        look: `Ask what its motor gets when it stands ${words(at)}: with ${list(lead)}, ${mains}?`,
        scene: {
          layout: layout.id,
          wires,
          config: { inputs, place: there },
          lit: cores.map((node) => system.nodes[node] ?? ''),
        },
      };
    };
    const options: Option[] = mover.positions.map((position, at) => ({
      id: position.replace(/\s+/g, '-'),
      says: capital(words(at)),
      right: at === now,
      why: () => why(at),
    }));
    return {
      id: addressOf(task, seed, level),
      method: 'valve-goes',
      ask: say(
        `${layout.title}. At first: ${sayInputs(system, before.config)}.`,
        sayValves(before),
        `Then ${change}. Where does the ${name} come to rest?`,
      ),
      scene: { layout: layout.id, wires, config: before.config },
      form: pickForm(options, false),
      hints: [
        `Which cores feed the ${name}, and what do they carry after the change?`,
        holds
          ? 'Full mains drives its motor on. Half mains, through the diode, holds it. With nothing the spring takes it back.'
          : 'Mains drives its motor on and keeps it there. With nothing the spring takes it back.',
        feeds[0] ?? `It stands ${words(was)} at first.`,
      ],
      steps: [
        ...feeds,
        `It starts ${words(was)}${was === now ? ', and nothing takes it away from there' : ` and ${now > was ? 'is driven on' : 'is taken back'}`}.`,
        `So it ends up ${words(now)}.`,
      ],
      answer: rightPick(options),
      judge: judgePick(options, false),
    };
  },
};
