import type { Judging } from '../../engine/grade/judge-for.ts';
import type { Verdict } from '../../engine/grade/verdict.ts';
import type { System } from '../../engine/model/system.ts';
import { distinctWires, type Wire, wireKey } from '../../engine/model/wiring.ts';
import { list } from '../../engine/rules/words.ts';
import { saySettings } from '../callouts/settings-words.ts';
import type { Layout } from '../layout.ts';
import { makeRandom, type Random } from '../random.ts';
import { mistaken } from './mistaken.ts';

/** What a job starts with, as far as a variant of it needs to know. */
export interface JobGiven {
  /** What it asks for. */
  readonly kind: 'bare' | 'complete' | 'put-right' | 'convert';
  /** Wires in place at the start. */
  readonly given: readonly Wire[];
  /** They are sound and stay. */
  readonly locked: boolean;
}

/** A job as one learner gets it. */
export interface JobVariant {
  readonly given: readonly Wire[];
  readonly locked: boolean;
  /**
   * What differs from the job as the course has it, a sentence each. In a job to put right these stand in place of the
   * brief, which tells of another wrong wire.
   */
  readonly says: readonly string[];
}

/** Gives terminals their names in a variant: ways of strips change places, all others stay. */
type Renumber = (wires: readonly Wire[]) => Wire[];

/** Deals the ways of every strip a place of their own. */
function renumbering(system: System, { shuffle }: Random): Renumber {
  const moved = new Map<string, string>();
  for (const { id, kind } of system.parts) {
    if (kind.kind !== 'strip') continue;
    const ways = kind.terminals.map((terminal) => `${id}/${terminal.id}`);
    const places = shuffle(ways);
    ways.forEach((way, k) => {
      moved.set(way, places[k] ?? way);
    });
  }
  const name = (terminal: string) => moved.get(terminal) ?? terminal;
  return (wires) => wires.map(([a, b]): Wire => [name(a), name(b)]);
}

/** The right wiring whose supplies land on a strip most often: what a bare job begins with. */
function supplyWires({ system, right }: Layout): Wire[] {
  const supplies = new Set(system.parts.filter(({ kind }) => kind.supply).map(({ id }) => id));
  const joints = new Set(system.parts.filter(({ kind }) => kind.kind === 'strip').map(({ id }) => id));
  const partOf = (terminal: string) => terminal.slice(0, terminal.indexOf('/'));
  const own = right.map(({ wires }) =>
    distinctWires(wires).filter(
      ([a, b]) =>
        (supplies.has(partOf(a)) && joints.has(partOf(b))) ||
        (supplies.has(partOf(b)) && joints.has(partOf(a))),
    ),
  );
  return own.reduce((best, wires) => (wires.length > best.length ? wires : best), []);
}

const OWN_NUMBERS = 'The numbers of the strip are your own: another learner’s strip is numbered differently.';

/** The gravest thing that is wrong, by what it does and when: never by where it is. */
function noticed(system: System, { findings: [first] }: Verdict): string[] {
  if (!first) return [];
  const when = list(saySettings(system, first.inputs));
  return [
    `What it does: ${first.fails.charAt(0).toLowerCase()}${first.fails.slice(1)}${when && `, when ${when}`}.`,
  ];
}

/**
 * A job as one learner gets it, always the same for the same seed. Strips are numbered anew, so a wiring copied from
 * another variant does not fit.
 * - To complete, to convert: the wires that were given, at their new numbers.
 * - From bare: the wires of the supply stand already, and stay.
 * - To put right: a right wiring of the layout with a mistake of its own, which the judge rejects.
 * @param judge of the layout's system
 * @param seed 32 bits
 */
export function jobVariant(job: JobGiven, layout: Layout, judge: Judging['judge'], seed: number): JobVariant {
  const random = makeRandom(seed);
  const renumber = renumbering(layout.system, random);
  switch (job.kind) {
    case 'complete':
    case 'convert':
      return { given: renumber(job.given), locked: job.locked, says: [OWN_NUMBERS] };
    case 'bare': {
      const given = renumber(supplyWires(layout));
      return {
        given,
        locked: true,
        says: [
          'One thing is done for you: the wires of the supply are landed. They are sound and stay.',
          OWN_NUMBERS,
        ],
      };
    }
    case 'put-right': {
      const { wires, verdict } = mistaken(layout, judge, random);
      return {
        given: renumber(wires),
        locked: false,
        says: [
          'Somebody has wired this and made one mistake. Find it, put it right, and leave the rest alone.',
          ...noticed(layout.system, verdict),
          OWN_NUMBERS,
        ],
      };
    }
  }
}

/** The share of the wires given that are still in place, from 0 to 1; 1 when none was given. */
export function shareKept({ given }: Pick<JobVariant, 'given'>, wires: readonly Wire[]): number {
  if (given.length === 0) return 1;
  const there = new Set(wires.map(wireKey));
  return given.filter((wire) => there.has(wireKey(wire))).length / given.length;
}

/** The wires given that may not be taken out, and are not there. */
export function lockedMissing({ given, locked }: JobVariant, wires: readonly Wire[]): readonly Wire[] {
  if (!locked) return [];
  const there = new Set(wires.map(wireKey));
  return given.filter((wire) => !there.has(wireKey(wire)));
}
