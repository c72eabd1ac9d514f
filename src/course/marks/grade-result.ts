import type { System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import type { Coursework } from '../coursework/coursework.ts';
import { dealJob, dealQuestion, visitAddress } from '../coursework/deal.ts';
import { gradeWork } from '../coursework/grade.ts';
import { type JobVariant, jobVariant, lockedMissing, shareKept } from '../coursework/job-variant.ts';
import { type Slot, variantSeed } from '../coursework/slots.ts';
import type { GradeSource, Marked } from '../coursework/source.ts';
import type { Result, Work } from '../coursework/work.ts';
import type { Answer } from '../item.ts';
import { canonical, hashed } from './fingerprint.ts';
import { isWay, type Slip, sameCircuitKey, slipsOf } from './own-numbers.ts';
import type { Piece, WiringFacts } from './piece.ts';
import { sure } from './sure.ts';

type JobSlot = Extract<Slot, { kind: 'job' }>;

/** A result and the name of the file it came in. */
export interface Read {
  readonly file: string;
  readonly result: Result;
}

/** Grades results of one coursework anew. What does not depend on the learner is worked out once. */
export interface ResultGrader {
  readonly grade: (read: Read) => Piece[];
  /** What is wrong with the wiring of a piece of work that the judge rejects; it takes some milliseconds. */
  readonly slips: (work: Work) => readonly Slip[];
  /** Which of these codes a piece of work was made for, if for any. */
  readonly whose: (work: Work, codes: readonly string[]) => string | undefined;
}

/** Of a put-right job, work that keeps so much of a variant's wires was made on it: one mistake is mended with a few. */
const MOSTLY = 0.75;

/** What a learner was given for a job, and what the layout's own wirings call each terminal of their strip. */
interface Given {
  readonly system: System;
  readonly variant: JobVariant;
  /** The wires given, by number. */
  readonly numbers: ReadonlySet<number>;
  readonly home: (node: number) => number;
}

const asIs = (node: number) => node;

/**
 * A number for each wire, whichever way round it is written. Every end must name a terminal of the system.
 * @param named which terminal each is to stand for
 */
function wireNumbers({ nodeOf, terminals }: System, wires: readonly Wire[], named = asIs): Set<number> {
  const node = (end: string) => named(sure(nodeOf.get(end)));
  return new Set(
    wires.map(([one, other]) => {
      const [a, b] = [node(one), node(other)];
      return a < b ? a * terminals + b : b * terminals + a;
    }),
  );
}

/** The same for every way of writing a wiring down. */
const printOf = (wires: ReadonlySet<number>): string => hashed([...wires].sort((a, b) => a - b).join());

/** @throws RangeError when the source lacks what the coursework names */
export function makeResultGrader(
  coursework: Coursework,
  slots: readonly Slot[],
  source: GradeSource,
): ResultGrader {
  const bySlot = new Map(slots.map((slot) => [slot.id, slot]));
  const variants = new Map<string, Given>();

  const circuits = new Map<string, string>();

  /** What a learner was given; with a shared variant everybody the same. */
  function givenTo(slot: JobSlot, code: string): Given {
    const seed = variantSeed(coursework, code, slot, 1);
    const key = `${slot.id} ${seed}`;
    const ready = variants.get(key);
    if (ready) return ready;
    const { layout, variant } = dealJob(coursework, slot, code, source);
    const { system } = layout;
    // A job to complete deals numbers and nothing else, so it shows where each way went.
    const ways = system.nodes.filter((name) => isWay(system, name)).map((way): Wire => [way, way]);
    const { judge } = source.judging(layout.id);
    const dealt = jobVariant({ kind: 'complete', given: ways, locked: false }, layout, judge, seed).given;
    const nodeOf = (terminal: string) => sure(system.nodeOf.get(terminal));
    const home = new Map(dealt.map(([own], k) => [nodeOf(own), nodeOf(sure(ways[k])[0])]));
    const given = {
      system,
      variant,
      numbers: wireNumbers(system, variant.given),
      home: (node: number) => home.get(node) ?? node,
    };
    variants.set(key, given);
    return given;
  }

  function wiringFacts(
    slot: JobSlot,
    code: string,
    wires: readonly Wire[],
    before: readonly Wire[] | undefined,
  ): WiringFacts | undefined {
    const given = givenTo(slot, code);
    const { system, numbers } = given;
    if (
      wires.some((wire) =>
        wire.some((end) => !((system.nodeOf.get(end) ?? system.terminals) < system.terminals)),
      )
    )
      return undefined;
    const own = wireNumbers(system, wires);
    const was = before ? wireNumbers(system, before) : numbers;
    const home = printOf(wireNumbers(system, wires, given.home));
    // Many make the same circuit: it is named once for all who have the same wires in the layout's own numbers.
    const known = `${slot.job} ${home}`;
    const circuit = circuits.get(known) ?? hashed(`${slot.job} ${sameCircuitKey(system, wires)}`);
    circuits.set(known, circuit);
    return {
      wiring: printOf(own),
      circuit,
      home,
      moved: Math.max(own.difference(was).size, was.difference(own).size),
      kept: numbers.size === 0 ? 1 : numbers.intersection(own).size / numbers.size,
    };
  }

  /** Never throws: what cannot be compared is not compared. */
  function tried<T>(what: () => T): T | undefined {
    try {
      return what();
    } catch {
      return undefined;
    }
  }

  return {
    grade({ file, result: { learner, work } }) {
      const last = new Map<string, readonly Wire[]>();
      return work.map((one, index): Piece => {
        const { slot: id, attempt, at, took, hints, kind, right: told } = one;
        const slot = bySlot.get(id);
        const marked: Marked = slot
          ? gradeWork(coursework, slot, one, learner, source)
          : { right: false, made: 'unknown', rules: [], notes: [`The coursework has no ${id}.`] };
        let wiring: WiringFacts | undefined;
        if (one.kind === 'job' && slot?.kind === 'job') {
          const job = slot;
          wiring = tried(() => wiringFacts(job, learner.code, one.wires, last.get(id)));
          if (wiring) last.set(id, one.wires);
        }
        return {
          file,
          index,
          slot: id,
          attempt,
          at,
          took,
          hints,
          kind,
          told,
          marked,
          // Of a wiring that can be read, the wires are all that was done.
          print: wiring?.wiring ?? hashed(canonical(doneIn(one))),
          about: one.kind === 'question' ? one.item : one.kind === 'visit' ? one.callout : '',
          deeds: deedsOf(one, wiring),
          ...(wiring && { wiring }),
        };
      });
    },
    slips(work) {
      const slot = bySlot.get(work.slot);
      if (work.kind !== 'job' || slot?.kind !== 'job') return [];
      const { system, right } = source.layout(source.job(slot.job).system);
      const all = right.map(({ wires }) => wires);
      return tried(() => slipsOf(system, work.wires, all).slips) ?? [];
    },
    whose(work, codes) {
      const slot = bySlot.get(work.slot);
      if (!slot) return undefined;
      return codes.find((code) => tried(() => fits(slot, work, code)));
    },
  };

  function fits(slot: Slot, work: Work, code: string): boolean {
    if (slot.kind === 'question')
      return (
        work.kind === 'question' &&
        dealQuestion(coursework, slot, code, work.attempt, source).id === work.item
      );
    if (slot.kind !== 'job')
      return work.kind === 'visit' && visitAddress(coursework, slot, code, work.attempt) === work.callout;
    if (work.kind !== 'job') return false;
    const { variant } = givenTo(slot, code);
    return variant.locked
      ? variant.given.length > 0 && lockedMissing(variant, work.wires).length === 0
      : variant.given.length > 0 && shareKept(variant, work.wires) >= MOSTLY;
  }
}

/** What was done, without when and how it went. */
function doneIn({ at: _at, took: _took, hints: _hints, right: _right, ...done }: Work): object {
  return done;
}

/** How many things were done at least. */
function deedsOf(work: Work, wiring: WiringFacts | undefined): number {
  if (work.kind === 'job') return wiring?.moved ?? 0;
  return work.kind === 'visit' ? work.acts.length : chosenIn(work.answer);
}

function chosenIn(answer: Answer): number {
  switch (answer.kind) {
    case 'choice':
      return answer.chosen.length;
    case 'mark':
      return answer.marked.length;
    case 'place':
      return Object.keys(answer.landed).length;
    case 'order':
      return answer.steps.length;
    default:
      return 1;
  }
}
