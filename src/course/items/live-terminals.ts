import { capital, list, sayNode } from '../../engine/rules/words.ts';
import { isShorted, pickState, pickWiring, type Standing } from '../circuit/standing.ts';
import { findsNothing } from '../circuit/volts.ts';
import { ifDead, ifLive, say, sayValves, sayWhyDead, sayWhyLive, worthAsking } from '../circuit/words.ts';
import type { Answer, Choice, Judgement, Note } from '../item.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { sayInputs } from './sight.ts';

const SHOWN: Readonly<Record<Level, number>> = { 1: 5, 2: 7, 3: 9 };

/** Judges marks: a note for each terminal that is marked and dead, or live and not marked. */
export function judgeMarks(standing: Standing, among: readonly Choice[]) {
  const { system, layout, wires, config, live } = standing;
  return (answer: Answer): Judgement => {
    const marked = new Set(answer.kind === 'mark' ? answer.marked : []);
    const notes = among.flatMap(({ id }): Note[] => {
      const node = system.nodeOf.get(id) ?? -1;
      const isLive = live.line[node] === true;
      if (marked.has(id) === isLive) return [];
      const name = capital(sayNode(system, node));
      return [
        {
          about: id,
          cause: isLive ? sayWhyLive(standing, node) : sayWhyDead(standing, node),
          consequence: isLive ? ifDead(standing, node) : ifLive(standing, node),
          look: live.neutral[node]
            ? `See what else is landed at ${sayNode(system, node)}: does it go to line or to neutral?`
            : `${name}: follow it back to the supply, and ask at each contact on the way whether it is made now.`,
          scene: { layout: layout.id, wires, config, lit: [id] },
        },
      ];
    });
    for (const id of marked) {
      if (among.some((one) => one.id === id)) continue;
      notes.push({
        about: id,
        cause: `“${id}” is not one of the terminals asked about.`,
        consequence: `Nothing can be told from “${id}”.`,
        look: `Mark only terminals of the list, and leave “${id}” out.`,
      });
    }
    return { right: notes.length === 0, notes };
  };
}

/** Which of some terminals are live in a state in which the system can rest? */
export const liveTerminals: Maker = {
  id: 'live-terminals',
  title: 'Which terminals are live?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const { wires, mistake } = pickWiring(layout, random, level);
    const standing = pickState(layout, wires, random, level);
    if (!standing || isShorted(standing)) return undefined;
    const { live, config } = standing;
    const nodes = system.nodes.flatMap((_, node) => (worthAsking(system, wires, node) ? [node] : []));
    // Ways of the strip first: that is where a tester goes.
    const onStrip = (node: number) => /^strip\//.test(system.nodes[node] ?? '');
    const ranked = [
      ...random.shuffle(nodes.filter(onStrip)),
      ...random.shuffle(nodes.filter((n) => !onStrip(n))),
    ];
    const count = Math.min(SHOWN[level], ranked.length);
    const alive = ranked.filter((node) => live.line[node]).slice(0, Math.ceil(count / 2));
    // One neutral is a fair trap, several are padding.
    const [neutral] = random.int(2) === 0 ? ranked.filter((node) => live.neutral[node]) : [];
    const nothing = findsNothing(standing);
    const dead = ranked
      .filter((node) => !live.line[node] && !live.earth[node] && (!live.neutral[node] || node === neutral))
      .filter(nothing)
      .slice(0, count - alive.length);
    if (alive.length < 1 || dead.length < 1 || alive.length + dead.length < 4) return undefined;
    const among = [...alive, ...dead]
      .sort((a, b) => a - b)
      .map((node) => ({ id: system.nodes[node] ?? '', says: capital(sayNode(system, node)) }));
    const telling = dead.find((node) => !live.neutral[node]);
    const names = (list_: readonly number[]) =>
      list([...list_].sort((a, b) => a - b).map((node) => sayNode(system, node)));
    return {
      id: addressOf(task, seed, level),
      method: 'live-terminals',
      ask: say(
        `${layout.title}. ${capital(sayInputs(system, config))}.`,
        sayValves(standing),
        mistake === undefined
          ? ''
          : `It is wired wrongly: ${mistake.charAt(0).toLowerCase()}${mistake.slice(1)}.`,
        'Mark every terminal that is live.',
      ),
      scene: { layout: layout.id, wires, config, dark: true },
      form: { kind: 'mark', among, one: false },
      hints: [
        'Start at the supply and go with the live. Which contacts lead on from it now?',
        'A contact joins both ways, so something can also come back from the far end. Live is whatever is joined to line.',
        telling !== undefined ? sayWhyDead(standing, telling) : sayWhyLive(standing, alive.at(-1) ?? -1),
      ],
      steps: [
        ...[...alive, ...dead]
          .sort((a, b) => a - b)
          .map((node) => (live.line[node] ? sayWhyLive(standing, node) : sayWhyDead(standing, node))),
        `So ${names(alive)} ${alive.length > 1 ? 'are' : 'is'} live, and ${names(dead)} ${dead.length > 1 ? 'are' : 'is'} not.`,
      ],
      answer: {
        kind: 'mark',
        marked: among.flatMap(({ id }) => (live.line[system.nodeOf.get(id) ?? -1] ? [id] : [])),
      },
      judge: judgeMarks(standing, among),
    };
  },
};
