import { closedContacts, directions, evaluate, type Live, partWorks } from '../../engine/circuit/plain.ts';
import { routeBetween } from '../../engine/circuit/trace.ts';
import { type Config, type Load, positionOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { type Bench, isValve, PART } from './bench.ts';

/** What goes on inside a part, in words. */
export interface Inside {
  /** Contacts that are made: "Switch 1 at rest: white to motor". */
  readonly made: readonly string[];
  /** What feeds each load, or that nothing does. */
  readonly feeds: readonly string[];
  /** What moves it or holds it; empty for a part that does not move. */
  readonly moves: string;
  /** Where its water goes or what work it does; empty for a part that does neither. */
  readonly does: string;
}

const nodeName = ({ nodes }: System, node: number): string =>
  (nodes[node] ?? '').slice(PART.length + 1).replace(/^\((.*)\)$/, '$1');

/** Ways through the valve in a position: "AB to B". */
export const waysOf = ({ kind }: Bench, position: string): readonly string[] =>
  (kind.passes?.(position) ?? []).map(([a, b]) => `${a} to ${b}`);

function sayFeed(
  bench: Bench,
  wires: readonly Wire[],
  config: Config,
  live: Live,
  { a, spec, via }: Load,
  works: boolean,
): string {
  const { system, index } = bench;
  const name = capital(spec.id);
  if (spec.ownLoop)
    return works ? `${name}: its pair is joined, so it works.` : `${name}: its pair is not joined.`;
  if (works) {
    const route = routeBetween(system, wires, config, system.supply.line, a) ?? [];
    const own = route.find((node) => system.partOfNode[node] === index && node < system.terminals);
    const from = own === undefined ? '' : ` from ${nodeName(system, own)}`;
    const closed = closedContacts(system, config);
    const through = route.slice(1).flatMap((node, k) => {
      const contact = system.contacts.find(
        (one, c) =>
          closed[c] &&
          one.part === index &&
          ((one.a === route[k] && one.b === node) || (one.b === route[k] && one.a === node)),
      );
      return contact ? [contact.spec.id] : [];
    });
    const way = through.length > 0 ? `, through ${list(through)}` : '';
    return via >= 0
      ? `${name}: fed${from}${way} and the diode. Half of every wave gets through.`
      : `${name}: fed${from}${way}.`;
  }
  if (via >= 0 && live.line[a])
    return `${name}: the whole wave already reaches the motor, so the diode adds nothing.`;
  return live.line[a] ? `${name}: live, but it has no neutral.` : `${name}: nothing feeds it.`;
}

/** A position to follow "it rests": "at port B", "at mid", "shut". */
export function sayAt(position: string): string {
  if (/^[AB]$/.test(position)) return `at port ${position}`;
  return position === 'mid' || position === 'rest' ? `at ${position}` : position;
}

function sayMoves({ kind, system, part }: Bench, live: Live, config: Config): string {
  const mover = system.movers[part.mover];
  if (!mover || !kind.motion) return '';
  const [way = 0] = [directions(system, live, config.place)[part.mover]];
  const position = positionOf(system, part, config.place);
  const at = sayAt(position);
  const driven = mover.drives.some((drive) => live.works[drive]);
  const valve = isValve(kind);
  if (way > 0) return valve ? 'The motor winds it on, against the spring.' : `It changes over. It was ${at}.`;
  if (way < 0)
    return valve ? 'Nothing holds it: the spring takes it back.' : 'Nothing holds it: it goes back.';
  if (driven)
    return valve
      ? `It has come to the end of its travel, ${at}. The motor stalls there and holds.`
      : `It stays ${at}.`;
  if (mover.hold >= 0 && live.works[mover.hold])
    return valve ? `Half a wave locks the motor: it holds ${at}.` : `It is held ${at}.`;
  return valve ? `It rests ${at}. The spring keeps it there.` : `It is ${at}.`;
}

/** Reads the part as it stands. */
export function sayInside(bench: Bench, wires: readonly Wire[], config: Config): Inside {
  const { system, kind, part, index } = bench;
  const live = evaluate(system, wires, config);
  const closed = closedContacts(system, config);
  const made = system.contacts.flatMap(({ part: owner, spec, a, b }, c) =>
    owner === index && closed[c]
      ? [`${capital(spec.id)}: ${nodeName(system, a)} to ${nodeName(system, b)}`]
      : [],
  );
  const feeds = system.loads.flatMap((load, k) =>
    load.part === index ? [sayFeed(bench, wires, config, live, load, live.works[k] === true)] : [],
  );
  const ways = waysOf(bench, positionOf(system, part, config.place));
  const works = partWorks(system, live, index);
  const word: Record<'fires' | 'pumps' | 'heats', readonly [string, string]> = {
    fires: ['It fires.', 'It does not fire.'],
    pumps: ['It runs.', 'It does not run.'],
    heats: ['It heats.', 'It does not heat.'],
  };
  const does = kind.work
    ? word[kind.work.does][works ? 0 : 1]
    : isValve(kind)
      ? ways.length > 0
        ? `Open: ${list(ways)}.`
        : 'Shut.'
      : '';
  return { made, feeds, moves: sayMoves(bench, live, config), does };
}
