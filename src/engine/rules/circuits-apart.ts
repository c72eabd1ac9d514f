import { anyOf } from '../circuit/sets.ts';
import { routeBetween, terminalsOf } from '../circuit/trace.ts';
import type { System } from '../model/system.ts';
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
  broken: (state) => met(state) !== undefined,
  where: ({ system, sets, lineOf, neutralOf }) =>
    anyOf(
      sets,
      pairs(system).flatMap(([a, b]) => {
        const { out, neutral } = system.supplies[b]!;
        return [lineOf(a, out.line), neutralOf(a, out.neutral), neutralOf(a, neutral)];
      }),
    ),
  explain(state) {
    const { system, wires, config, live } = state;
    const [a, b] = met(state)!;
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
