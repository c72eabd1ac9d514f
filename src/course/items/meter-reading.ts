import { measure } from '../../engine/meter/measure.ts';
import { figure } from '../../engine/model/figure.ts';
import { capital, sayNode } from '../../engine/rules/words.ts';
import { pickState, type Standing } from '../circuit/standing.ts';
import { ifDead, ifLive, say, sayValves, sayWhyDead, sayWhyLive, worthAsking } from '../circuit/words.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { judgeNumber } from './number.ts';
import type { Words } from './pick.ts';
import { sayInputs } from './sight.ts';

/** The nominal supply, and how far off a reading may be typed (ESQCR 2002, regulation 27: +10 % and −6 %). */
const NOMINAL = 230;
const TOLERANCE = 23;

const sayNeutral = (standing: Standing, node: number) =>
  `${capital(sayNode(standing.system, node))} is joined to neutral.`;

/** How many volts does a tester read between two terminals? */
export const meterReading: Maker = {
  id: 'meter-reading',
  title: 'What does the tester read?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const wires = random.pick(layout.right).wires;
    const standing = pickState(layout, wires, random, level);
    if (!standing) return undefined;
    const { live, config } = standing;
    const nodes = system.nodes.flatMap((_, node) => (worthAsking(system, wires, node) ? [node] : []));
    const neutrals = system.nodes.flatMap((name, node) =>
      node < system.terminals && live.neutral[node] && wires.some((wire) => wire.includes(name))
        ? [node]
        : [],
    );
    if (nodes.length < 2 || neutrals.length === 0) return undefined;
    const first = random.pick(nodes);
    // Mostly to neutral, as on a job; on the higher levels also between two others.
    const second = level > 1 && random.int(3) === 0 ? random.pick(nodes) : random.pick(neutrals);
    if (first === second) return undefined;
    const [a, b] = [system.nodes[first] ?? '', system.nodes[second] ?? ''];
    const reading = measure(system, wires, config).volts(a, b);
    if (reading === 'floating') return undefined;
    const { volts } = reading;
    // A half wave, or a reading that comes through a load, is no fair question yet.
    const lives = [first, second].filter((node) => live.line[node]);
    const neutral = live.neutral[first] || live.neutral[second];
    const oneLine = live.lines.some((line) => line[first] && line[second]);
    const value =
      lives.length === 1 && neutral && Math.abs(volts - NOMINAL) < 5
        ? NOMINAL
        : (lives.length === 0 || oneLine) && volts < 5
          ? 0
          : undefined;
    if (value === undefined) return undefined;
    const sayOf = (node: number) =>
      live.line[node]
        ? sayWhyLive(standing, node)
        : live.neutral[node]
          ? sayNeutral(standing, node)
          : sayWhyDead(standing, node);
    const [one, other] = [sayNode(system, first), sayNode(system, second)];
    const both = `${sayOf(first)} ${sayOf(second)}`;
    const because =
      value === NOMINAL
        ? `Between line and neutral there are ${NOMINAL} V.`
        : oneLine
          ? 'Both are joined to the same line, so there is nothing between them.'
          : 'Neither is joined to line, so there is nothing between them.';
    const scene = { layout: layout.id, wires, config, lit: [a, b] };
    const consequence = (given: number): string => {
      const read = `${figure(given, 1)} V`;
      if (value === NOMINAL)
        return `At ${read} you would look for a fault that is not there. ${ifDead(standing, live.line[first] ? first : second)}`;
      return oneLine
        ? `At ${read} you would take one of them for neutral. Both are live: touch either and you touch the mains.`
        : `At ${read} you would take ${one} or ${other} for live, and neither is. ${ifLive(standing, first)}`;
    };
    /** What would have to be so for another reading. */
    const needs = (given: number): string =>
      value === 0
        ? 'line at one of them and not at the other'
        : Math.abs(given) < 5
          ? 'both to be joined to one and the same core'
          : 'a load in the way';
    const wrong = (given: number): Words => ({
      cause: `${both} ${because} So it reads ${value} V, not ${figure(given, 1)} V.`,
      consequence: consequence(given),
      look: `Ask of ${one} and of ${other} by itself: is it joined to line, to neutral, or to neither? ${figure(given, 1)} V would need ${needs(given)}.`,
      scene,
    });
    return {
      id: addressOf(task, seed, level),
      method: 'meter-reading',
      ask: say(
        `${layout.title}. ${capital(sayInputs(system, config))}.`,
        sayValves(standing),
        `A two-pole tester is between ${one} and ${other}. What does it read? Give volts.`,
      ),
      scene: { ...scene, dark: true },
      form: { kind: 'number', unit: 'V', accepts: ['V', 'volt', 'volts', 'v a.c.', 'V ac'] },
      hints: [
        `Take ${one} first: where does it get its feed from, and is every contact on the way made?`,
        `Line to neutral reads ${NOMINAL} V. Line to line, and neutral to neutral, reads nothing.`,
        sayOf(second),
      ],
      steps: [sayOf(first), sayOf(second), because, `So it reads ${value} V.`],
      answer: { kind: 'number', typed: `${value} V` },
      judge: (given) =>
        judgeNumber(given.kind === 'number' ? given.typed : '', {
          unit: 'V',
          accepts: ['V', 'volt', 'volts', 'v a.c.', 'V ac'],
          value,
          tolerance: value === 0 ? 4 : TOLERANCE,
          slips: [],
          wrong,
        }),
    };
  },
};
