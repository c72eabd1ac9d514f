import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';
import { type CallRoute, callRoute } from '../circuit/call-route.ts';
import { type Standing, settled, stand } from '../circuit/standing.ts';
import { findsNothing } from '../circuit/volts.ts';
import { say, sayHeldUp, sayValves, sayWhyLive } from '../circuit/words.ts';
import type { Answer, Judgement, Note } from '../item.ts';
import type { Layout } from '../layout.ts';
import { makeRandom, type Random } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { sayInputs } from './sight.ts';

const SHOWN: Readonly<Record<Level, number>> = { 1: 5, 2: 7, 3: 9 };

/** The same call with something in its way: a control that is not set, or a wire that has come off. */
function spoil(
  { standing, route }: CallRoute,
  layout: Layout,
  random: Random,
  level: Level,
): Standing | undefined {
  const { system, wires, config } = standing;
  const supplies = system.supplies.map(({ input }) => input);
  if (level < 3 && random.int(2) === 0) {
    const asked = system.inputs.flatMap((_, k) =>
      (config.inputs >> k) & 1 && !supplies.includes(k) ? [k] : [],
    );
    if (asked.length === 0) return undefined;
    const inputs = config.inputs & ~(1 << random.pick(asked));
    const place = settled(system, wires, inputs, 0);
    return place === undefined ? undefined : stand(layout, wires, { inputs, place });
  }
  const names = new Set(route.map((node) => system.nodes[node]));
  const lifted: Wire | undefined = random.pick(wires.filter(([a, b]) => names.has(a) && names.has(b)));
  const left = wires.filter((wire) => wireKey(wire) !== wireKey(lifted));
  const place = settled(system, left, config.inputs, 0);
  return place === undefined ? undefined : stand(layout, left, { inputs: config.inputs, place });
}

/** Where does the live of a call stop? */
export const whereStops: Maker = {
  id: 'where-stops',
  title: 'Where does the live stop?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    if (system.spec.demands.length === 0) return undefined;
    const { wires } = random.pick(layout.right);
    const demand = random.pick(system.spec.demands);
    const valves = random.int(2) === 0;
    const call = callRoute(layout, wires, demand, valves) ?? callRoute(layout, wires, demand);
    const bad = call && spoil(call, layout, random, level);
    if (!call || !bad) return undefined;
    const way = call.route.filter((node) => node < system.terminals);
    const isLive = (node: number) => bad.live.line[node] === true;
    const stop = way.findIndex((node) => !isLive(node)) - 1;
    // A fair question has one place where it stops: live before it, dead after it.
    const beyond = way.slice(stop + 1);
    if (stop < 0 || beyond.some(isLive) || !beyond.every(findsNothing(bad))) return undefined;
    const near = (k: number) => Math.abs(k - stop - 0.5);
    const shown = way
      .map((_, k) => k)
      .sort((a, b) => near(a) - near(b))
      .slice(0, SHOWN[level])
      .sort((a, b) => a - b)
      .map((k) => way[k] ?? 0);
    if (shown.length < 4 || !shown.some((node) => !isLive(node))) return undefined;
    const among = shown.map((node) => ({
      id: system.nodes[node] ?? '',
      says: capital(sayNode(system, node)),
    }));
    const answer = system.nodes[way[stop] ?? 0] ?? '';
    const next = way[stop + 1] ?? 0;
    const here = way[stop] ?? 0;
    /** Why a terminal of this way is dead; another way may lead there too, and that one is not asked about. */
    const sayStopped = (node: number) =>
      `${capital(sayNode(system, node))} is dead: on this way the live stops at ${sayNode(system, here)}, ${sayHeldUp(bad, here, next)}.`;
    const scene = { layout: layout.id, wires: bad.wires, config: bad.config };
    const noteOn = (id: string): Note => {
      const node = system.nodeOf.get(id) ?? -1;
      const at = way.indexOf(node);
      if (at < 0)
        return {
          about: id,
          cause: `“${id || 'Nothing'}” is not on the way of this call as it is listed.`,
          consequence: `With “${id || 'nothing'}” marked, nobody knows where to put the tester.`,
          look: 'Mark one terminal of the list.',
        };
      const name = sayNode(system, node);
      const [after, before] = [way[at + 1] ?? node, way[at - 1] ?? node];
      return at < stop
        ? {
            about: id,
            cause: `${sayWhyLive(bad, node)} But ${sayNode(system, after)}, the next on the way, is live too. So it does not stop at ${name}.`,
            consequence: `You would look for the fault between ${name} and ${sayNode(system, after)}, and find both live.`,
            look: `Put the tester on ${sayNode(system, after)}, and go on towards ${call.to}.`,
            scene: { ...scene, lit: [id] },
          }
        : {
            about: id,
            cause: `${capital(name)} is dead. The live must have stopped before it: ${sayNode(system, before)} is ${isLive(before) ? 'live' : 'dead as well'}.`,
            consequence: `You would open up what lies after ${name}, and find nothing wrong with it.`,
            look: `Go back towards the supply: is ${sayNode(system, before)} live?`,
            scene: { ...scene, lit: [id] },
          };
    };
    // A test half way along the list, but not next to the answer.
    const middle = (shown.length - 1) / 2;
    const [tested = shown[0] ?? here] = shown
      .filter((node) => node !== here && node !== next)
      .sort((a, b) => Math.abs(shown.indexOf(a) - middle) - Math.abs(shown.indexOf(b) - middle));
    const judge = (given: Answer): Judgement => {
      const marked = given.kind === 'mark' ? [...new Set(given.marked)] : [];
      if (marked.length === 1 && marked[0] === answer) return { right: true, notes: [] };
      if (marked.length > 1) {
        const names = list(
          marked.map((id) => (system.nodeOf.has(id) ? sayNode(system, system.nodeOf.get(id) ?? 0) : id)),
        );
        return {
          right: false,
          notes: [
            {
              about: '',
              cause: `You marked ${names}. The live stops in one place.`,
              consequence: `With ${marked.length} places to open up, half the work is for nothing.`,
              look: `Of ${names}, keep the last one that is live.`,
            },
          ],
        };
      }
      return { right: false, notes: [noteOn(marked[0] ?? '')] };
    };
    return {
      id: addressOf(task, seed, level),
      method: 'where-stops',
      ask: say(
        `${layout.title}. ${capital(sayInputs(system, bad.config))}.`,
        sayValves(bad),
        `${capital(call.fails)}. Follow the way of a call for ${call.demand.says} from the supply to ${call.to}. Which is the last terminal that is live?`,
      ),
      scene: { ...scene, dark: true },
      form: { kind: 'mark', among, one: true },
      hints: [
        'Test in the middle of the way first. Live: the fault lies after it. Dead: before it.',
        'The live stops where one terminal is live and the next one on the way is dead.',
        isLive(tested)
          ? `${sayWhyLive(bad, tested)} So look further on.`
          : `${capital(sayNode(system, tested))} is dead. So look nearer to the supply.`,
      ],
      steps: [
        ...shown.filter((node) => isLive(node)).map((node) => sayWhyLive(bad, node)),
        sayStopped(next),
        `So the last live terminal is ${sayNode(system, way[stop] ?? 0)}.`,
      ],
      answer: { kind: 'mark', marked: [answer] },
      judge,
    };
  },
};
