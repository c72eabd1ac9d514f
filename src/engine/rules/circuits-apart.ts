import { anyOf } from '../circuit/sets.ts';
import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { Load, System } from '../model/system.ts';
import type { StateRule } from './rule.ts';
import type { StateView } from './view.ts';
import { saySettings } from './words.ts';

/** Every two supplies, each pair once, by number. */
const pairs = ({ supplies }: System) =>
  supplies.flatMap((_, a) => supplies.slice(a + 1).map((_, k) => [a, a + 1 + k] as const));

const met = ({ system, live }: StateView) =>
  pairs(system).find(([a, b]) => {
    const { out, neutral } = system.supplies[b]!;
    return live.lines[a]![out.line] || live.neutrals[a]![out.neutral] || live.neutrals[a]![neutral];
  });

/** Both ways round a load: which end is on the line, and which on the neutral. */
const ways = ({ a, b }: Load) => [
  [a, b],
  [b, a],
];

/** A load on the line of one supply whose neutral is another's alone: a borrowed neutral. */
const borrowed = ({ system, live }: StateView) =>
  system.loads.find(
    (load) =>
      !load.spec.ownLoop &&
      ways(load).some(([from, to]) =>
        live.lines.some((line, s) => line[from!] && live.neutral[to!] && !live.neutrals[s]![to!]),
      ),
  );

export const circuitsApart: StateRule = {
  id: 'circuits-apart',
  title: 'Each circuit keeps to its own line and neutral',
  fails: 'Two circuits are joined',
  severity: 'danger',
  source: 'BS 7671:2018, 314.4 (each circuit separate from every other)',
  function:
    'With one circuit switched off, its wires stay live from the other, or its neutral carries the other’s current.',
  compare: 'Compare the cores of the two supplies: nothing may join them but the earth.',
  scope: 'met',
  broken: (state) => met(state) !== undefined || borrowed(state) !== undefined,
  where: ({ system, sets }) => {
    const two = pairs(system);
    if (two.length === 0) return () => sets.none;
    const ends = system.loads.filter(({ spec }) => !spec.ownLoop).flatMap(ways);
    return ({ lineOf, neutralOf, neutral }) => {
      const joined = two.flatMap(([a, b]) => {
        const { out, neutral: pole } = system.supplies[b]!;
        return [lineOf(a, out.line), neutralOf(a, out.neutral), neutralOf(a, pole)];
      });
      const lent = ends.flatMap(([from, to]) =>
        system.supplies.map((_, s) =>
          sets.and(lineOf(s, from!), sets.minus(neutral(to!), neutralOf(s, to!))),
        ),
      );
      return anyOf(sets, [...joined, ...lent]);
    };
  },
  explain(state) {
    const { system, wires, config, live } = state;
    const pair = met(state);
    if (!pair) {
      const load = borrowed(state)!;
      return {
        says: `${saySettings(state)}, the ${load.spec.id} of the ${system.parts[load.part]!.name.toLowerCase()} takes its line from one circuit and its neutral from the other.`,
        terminals: [load.a, load.b]
          .filter((node) => node < system.terminals)
          .map((node) => system.nodes[node]!),
      };
    }
    const [a, b] = pair;
    const [one, other] = [system.supplies[a]!, system.supplies[b]!];
    const lines = live.lines[a]![other.out.line]!;
    const [from, to] = lines ? [one.line, other.out.line] : [one.neutral, other.out.neutral];
    const name = (part: number) => `the ${system.parts[part]!.name.toLowerCase()}`;
    return {
      says: `${saySettings(state)}, the ${lines ? 'line' : 'neutral'} of ${name(one.part)} is joined to that of ${name(other.part)}.`,
      terminals: terminalsOf(system, routeBetween(system, wires, config, from, to) ?? [from, to]),
    };
  },
};
