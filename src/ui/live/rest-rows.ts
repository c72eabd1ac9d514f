import type { Layout } from '../../course/layout.ts';
import { restsFrom } from '../../course/rests.ts';
import type { Core } from '../../engine/model/part.ts';
import { partNamed, positionOf, type Settings } from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';
import { benchFor, benchWires, PART, startOf } from '../inside/bench.ts';

/** One mix of what the cores of a valve carry, and where it comes to rest from each of its positions. */
export interface RestRow {
  /** Whether each core is live, in the order of `cores`. */
  readonly live: readonly boolean[];
  /** Where it comes to rest from each position, in the order of `from`; undefined where it never does. */
  readonly rests: readonly (string | undefined)[];
}

export interface RestTable {
  readonly name: string;
  readonly cores: readonly { readonly id: string; readonly core: Core }[];
  /** Positions by the engine's name. */
  readonly from: readonly string[];
  readonly rows: readonly RestRow[];
  /** How the layout says that the valve stands in a position. */
  readonly says: Settings;
}

/**
 * Where a valve goes for each mix of what its cores carry, from each position: its own mechanism alone, fed core by core.
 * Outputs are not fed, as nothing outside is there to feed them.
 * @throws RangeError naming the parts of the layout that move, when the one asked for is none of them
 */
export function restTable({ system: site }: Pick<Layout, 'system'>, valve: string): RestTable {
  const moving = site.parts.filter(({ kind, mover }) => mover >= 0 && kind.ports);
  if (!moving.some(({ id }) => id === valve))
    throw new RangeError(
      `expected a valve of the layout (${list(moving.map(({ id }) => id))}), found "${valve}"`,
    );
  const { kind, name, id } = partNamed(site, valve);
  const bench = benchFor(kind.kind);
  const { system } = bench;
  const mover = system.movers[partNamed(system, PART).mover];
  const positions = mover?.positions ?? [];
  const cores = bench.feeds.map(({ id: terminal }) => ({
    id: terminal,
    core: kind.terminals.find((one) => one.id === terminal)?.core ?? 'brown',
  }));
  const { inputs } = startOf(bench);
  const rows = Array.from({ length: 2 ** cores.length }, (_, mix): RestRow => {
    const live = cores.map((_, k) => ((mix >> k) & 1) === 1);
    const wires = benchWires(bench, new Set(cores.flatMap((core, k) => (live[k] ? [core.id] : []))));
    return {
      live,
      rests: positions.map((_, k) => {
        const place = restsFrom(system, wires, inputs, [k * (mover?.stride ?? 1)])[0];
        return place === undefined ? undefined : positionOf(system, bench.part, place);
      }),
    };
  });
  return { name, cores, from: positions, rows, says: site.spec.parts[id]?.positions ?? {} };
}

/** A position for a heading or a cell. */
export const restWord = (position: string): string =>
  /^[AB]$/.test(position) ? `port ${position}` : position;
