import { joinedTo, jointsIn } from '../../engine/circuit/plain.ts';
import { routeBetween, whereItStops } from '../../engine/circuit/trace.ts';
import { measure, type Readings } from '../../engine/meter/measure.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';
import { sayCause } from '../circuit/cause.ts';
import { stand } from '../circuit/standing.ts';
import { sayWay, worthAsking } from '../circuit/words.ts';
import type { Answer, Judgement, Note } from '../item.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { sayInputs } from './sight.ts';

const SHOWN: Readonly<Record<Level, number>> = { 1: 5, 2: 6, 3: 8 };

/** With the supply off, which terminals does a continuity test find joined to a named one? */
export const deadTest: Maker = {
  id: 'dead-test',
  title: 'What is joined to what, with the supply off?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const wires = random.pick(layout.right).wires;
    const off = system.supplies.reduce((bits, { input }) => (input >= 0 ? bits | (1 << input) : bits), 0);
    // Everything isolated; thermostats and switches as they may stand. Springs have taken the valves to rest.
    const inputs = system.inputs.reduce(
      (bits, _, k) => (random.int(2) === 0 && !((off >> k) & 1) ? bits | (1 << k) : bits),
      0,
    );
    const standing = stand(layout, wires, { inputs, place: 0 });
    const joints = jointsIn(system, wires, standing.config);
    const nodes = system.nodes.flatMap((_, node) => (worthAsking(system, wires, node) ? [node] : []));
    const first = random.pick(nodes);
    const joined = joinedTo(joints, first);
    const wired = (node: number) =>
      wires.some(
        (wire) => wire.includes(system.nodes[node] ?? '') && wire.includes(system.nodes[first] ?? ''),
      );
    const rest = random.shuffle(nodes.filter((node) => node !== first && (level === 1 || !wired(node))));
    const yes = rest.filter((node) => joined[node]).slice(0, Math.ceil(SHOWN[level] / 2));
    const no = rest.filter((node) => !joined[node]).slice(0, SHOWN[level] - yes.length);
    if (yes.length < 1 || no.length < 2) return undefined;
    const asked = [...yes, ...no].sort((a, b) => a - b);
    const among = asked.map((node) => ({
      id: system.nodes[node] ?? '',
      says: capital(sayNode(system, node)),
    }));
    const one = sayNode(system, first);
    let readings: Readings | undefined;
    const meter = (): Readings => {
      readings ??= measure(system, wires, standing.config);
      return readings;
    };
    const why = (node: number): string => {
      const other = sayNode(system, node);
      const route = routeBetween(system, wires, standing.config, first, node);
      if (route) return `${capital(one)} and ${other} are joined ${sayWay(standing, route)}.`;
      const { route: gap, contact } = whereItStops(system, wires, standing.config, node, joined);
      if (contact === undefined) {
        const ohms = meter().ohms(system.nodes[first] ?? '', system.nodes[node] ?? '');
        return Number.isFinite(ohms)
          ? `Between ${one} and ${other} there is no way through wires and contacts, only through a load. That is far from 0 Ω.`
          : `Between ${one} and ${other} there is no way through wires and contacts.`;
      }
      return `${capital(one)} and ${other} are not joined. The way between them is open at ${sayNode(system, gap[0] ?? node)}: ${sayCause(system, contact, standing.config)}.`;
    };
    const judge = (given: Answer): Judgement => {
      const marked = new Set(given.kind === 'mark' ? given.marked : []);
      const notes = asked.flatMap((node): Note[] => {
        const id = system.nodes[node] ?? '';
        const isJoined = joined[node] === true;
        if (marked.has(id) === isJoined) return [];
        const other = sayNode(system, node);
        return [
          {
            about: id,
            cause: why(node),
            consequence: isJoined
              ? `You would look for a break between ${one} and ${other}, and there is none.`
              : `If you take ${one} and ${other} for joined, a wrong link between them would pass your test unnoticed.`,
            look: `Put the leads on ${one} and ${other}, and think through what stands between them: is each contact made as it stands now?`,
            scene: {
              layout: layout.id,
              wires,
              config: standing.config,
              lit: [system.nodes[first] ?? '', id],
            },
          },
        ];
      });
      for (const id of marked)
        if (!among.some((choice) => choice.id === id))
          notes.push({
            about: id,
            cause: `“${id}” is not one of the terminals asked about.`,
            consequence: `Nothing can be told from “${id}”.`,
            look: `Mark only terminals of the list, and leave “${id}” out.`,
          });
      return { right: notes.length === 0, notes };
    };
    return {
      id: addressOf(task, seed, level),
      method: 'dead-test',
      ask: `${layout.title}. It is isolated and proved dead, and everything that moves is at rest. ${capital(sayInputs(system, standing.config))}. One lead of a continuity tester is on ${one}. Mark every terminal that it finds joined to it. (Joined is close to 0 Ω: a motor or a coil between them does not count.)`,
      scene: { layout: layout.id, wires, config: standing.config, lit: [system.nodes[first] ?? ''] },
      form: { kind: 'mark', among, one: false },
      hints: [
        `Start at ${one}. Which wires leave it, and which contacts do they lead to?`,
        'Thermostats and switches hold their contacts with no supply. No motor has a feed, so springs hold every valve at rest.',
        why(no[0] ?? 0),
      ],
      steps: [
        ...asked.map(why),
        `So joined to ${one} ${yes.length > 1 ? 'are' : 'is'} ${list(asked.filter((node) => joined[node]).map((node) => sayNode(system, node)))}.`,
      ],
      answer: {
        kind: 'mark',
        marked: among.flatMap(({ id }) => (joined[system.nodeOf.get(id) ?? -1] ? [id] : [])),
      },
      judge,
    };
  },
};
