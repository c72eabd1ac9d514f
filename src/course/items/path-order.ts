import { evaluate } from '../../engine/circuit/plain.ts';
import { routeBetween } from '../../engine/circuit/trace.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';
import { callRoute } from '../circuit/call-route.ts';
import { sayWay } from '../circuit/words.ts';
import type { Answer, Judgement, Note } from '../item.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { sayInputs } from './sight.ts';

const SHOWN: Readonly<Record<Level, number>> = { 1: 4, 2: 5, 3: 7 };

/** In which order does the live of a call pass its terminals? */
export const pathOrder: Maker = {
  id: 'path-order',
  title: 'Which way does the call go?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    if (system.spec.demands.length === 0) return undefined;
    const wires = random.pick(layout.right).wires;
    const demand = random.pick(system.spec.demands);
    const valves = random.int(2) === 0;
    const call = callRoute(layout, wires, demand, valves) ?? callRoute(layout, wires, demand);
    if (!call) return undefined;
    const { standing, route, to } = call;
    const { config } = standing;
    // Two ends of one wire are one place to a learner: of each net only one terminal is asked.
    const way = route.filter((node) => node < system.terminals);
    const nets = way.filter((node, k) => {
      const before = way[k - 1];
      return (
        before === undefined ||
        !wires.some(
          (wire) => wire.includes(system.nodes[node] ?? '') && wire.includes(system.nodes[before] ?? ''),
        )
      );
    });
    const pool = nets.length >= SHOWN[level] ? nets : way;
    const ends = [pool[0] ?? 0, pool.at(-1) ?? 0];
    const between = random.shuffle(pool.slice(1, -1)).slice(0, SHOWN[level] - 2);
    const asked = pool.filter((node) => ends.includes(node) || between.includes(node));
    if (asked.length < 3) return undefined;
    const names = asked.map((node) => system.nodes[node] ?? '');
    const shuffled = random.shuffle(asked);
    if (shuffled.every((node, k) => node === asked[k])) return undefined;
    const say = (id: string) =>
      system.nodeOf.has(id) ? sayNode(system, system.nodeOf.get(id) ?? 0) : `“${id}”`;

    /** What is dead with every wire at a terminal off: what lies after it on the way. */
    const cut = (id: string, other: string): string => {
      const isLive = (off: string, at: string) =>
        evaluate(
          system,
          wires.filter((wire) => !wire.includes(off)),
          config,
        ).line[system.nodeOf.get(at) ?? -1];
      const after = `With the wires off ${say(id)}, ${say(other)} is ${isLive(id, other) ? 'still live, by another way' : 'dead'}.`;
      return isLive(other, id)
        ? `${after} With the wires off ${say(other)}, ${say(id)} is still live.`
        : `${after} Look for a break in your order and you open up the wrong box.`;
    };
    const judge = (given: Answer): Judgement => {
      const order = given.kind === 'order' ? given.steps : [];
      if (order.length === names.length && order.every((id, k) => id === names[k]))
        return { right: true, notes: [] };
      const missing = names.filter((id) => !order.includes(id));
      const notes: Note[] = missing.map((id) => ({
        about: id,
        cause: `${capital(say(id))} is not in your order, and the live passes it.`,
        consequence: `A break at ${say(id)} would be looked for nowhere.`,
        look: `Find ${say(id)} on the strip, and see what is landed there.`,
      }));
      order.forEach((id, k) => {
        const [here, next] = [names.indexOf(id), names.indexOf(order[k + 1] ?? '')];
        if (here < 0 || order.indexOf(id) < k) {
          notes.push({
            about: id,
            cause: `${capital(say(id))} ${here < 0 ? 'was not asked for' : 'stands twice in your order'}.`,
            consequence: `A way cannot pass ${say(id)} like that.`,
            look: `Put each terminal of the list in once, ${say(id)} too.`,
          });
        } else if (next >= 0 && next < here) {
          const [from, to] = [system.nodeOf.get(names[next] ?? '') ?? 0, system.nodeOf.get(id) ?? 0];
          const hop = routeBetween(system, wires, config, from, to) ?? [];
          notes.push({
            about: id,
            cause: `You have ${say(id)} before ${say(order[k + 1] ?? '')}. But the live gets to ${say(id)} from ${say(names[next] ?? '')}. It goes ${sayWay(standing, hop)}.`,
            consequence: cut(names[next] ?? '', id),
            look: `Stand at ${say(id)} and look back: which of its wires comes from the supply?`,
            scene: { layout: layout.id, wires, config, lit: [id, names[next] ?? ''] },
          });
        }
      });
      return { right: notes.length === 0, notes };
    };
    const hop = (k: number): string => {
      const [from, to] = [asked[k - 1] ?? 0, asked[k] ?? 0];
      const found = routeBetween(system, wires, config, from, to) ?? [];
      return `From ${sayNode(system, from)} it goes ${sayWay(standing, found)} to ${sayNode(system, to)}.`;
    };
    return {
      id: addressOf(task, seed, level),
      method: 'path-order',
      ask: `${layout.title}. ${capital(sayInputs(system, config))}. ${system.movers.length > 0 ? 'Everything has come to rest. ' : ''}Follow the live to ${to}: in which order does it pass these?`,
      scene: { layout: layout.id, wires, config },
      form: {
        kind: 'order',
        steps: shuffled.map((node) => ({
          id: system.nodes[node] ?? '',
          says: capital(sayNode(system, node)),
        })),
      },
      hints: [
        `Start at the supply, and keep ${to} in mind as the end. What can the live go into first?`,
        'From each terminal there is a wire, or a contact that is made. Go only where the call makes it go.',
        hop(1),
      ],
      steps: [...asked.slice(1).map((_, k) => hop(k + 1)), `So the order is ${list(names.map(say))}.`],
      answer: { kind: 'order', steps: names },
      judge,
    };
  },
};
