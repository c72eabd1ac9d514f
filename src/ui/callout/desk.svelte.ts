import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import type { Layout } from '../../course/layout.ts';
import type { Act } from '../../engine/diagnose/act.ts';
import { type Bench, makeBench } from '../../engine/diagnose/bench.ts';
import type { Breach } from '../../engine/diagnose/breach.ts';
import { allCandidates, type Callout } from '../../engine/diagnose/callout.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Outcome } from '../../engine/diagnose/evidence.ts';
import type { Instrument } from '../../engine/diagnose/instrument.ts';
import { begin, type Entry, go, standOf, type Visit } from '../../engine/diagnose/replay.ts';
import type { Setup } from '../../engine/diagnose/setup.ts';
import type { Stand } from '../../engine/diagnose/world.ts';
import { type Part, partNamed, partOf, type System, settingsOf } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { keepVisit } from './keep.ts';
import { sayEntry } from './notes.ts';
import type { Story } from './story.ts';
import type { VisitTerms } from './terms.ts';

/** The red lead and the black one. */
export type Lead = 0 | 1;
export type Probes = readonly [string | undefined, string | undefined];

/** Training wheels: how many candidates remain, the live path, the next test that a good engineer would make. */
export const WHEELS = ['count', 'path', 'next'] as const;
export type Wheel = (typeof WHEELS)[number];

/** What the meter shows between the two probes. */
export interface Reading {
  readonly instrument: Instrument;
  readonly between: readonly [string, string];
  readonly shown: Outcome;
  /** False once something was done that may have changed it: then it has to be taken again. */
  readonly fresh: boolean;
  /** Its line in the notebook, from 0. */
  readonly entry: number;
}

/** A breach that was told and not yet put away. */
export interface Told {
  readonly entry: number;
  readonly breach: Breach;
}

/** Acts that only ask: they leave the system and the covers as they are. */
const asks = ({ act }: Entry): boolean =>
  act.do === 'test' || act.do === 'dead-test' || act.do === 'prove' || act.do === 'identify';

/** One callout on the learner's desk: the visit so far, the meter in their hands, and what they say is wrong. Nothing can be undone. */
export class VisitDesk {
  readonly layout: Layout;
  readonly callout: Callout;
  readonly story: Story;
  /** Double faults that may also be the answer. */
  readonly doubles: readonly Candidate[];
  /** Only a visit that counts has them. */
  readonly terms: VisitTerms | undefined;
  readonly system: System;
  readonly bench: Bench;

  visit: Visit;
  instrument = $state<Instrument>('tester');
  /** Terminals that the red and the black probe are on. */
  probes = $state.raw<Probes>([undefined, undefined]);
  /** The lead in the hand: `place` puts this one. */
  lead = $state<Lead>(0);
  /** What the last act led to, in words, for everybody to see and hear. */
  message = $state('');
  /** Why the last act could not be done; empty when it could. */
  trouble = $state('');
  /** Breaches that still stand on the page. */
  told = $state.raw<readonly Told[]>([]);
  wheels = $state.raw<Readonly<Record<Wheel, boolean>>>({ count: false, path: false, next: false });
  /** Wheels that were on at any time of this visit. */
  wheelsUsed = $state.raw<ReadonlySet<Wheel>>(new Set());
  /** What the learner says is wrong, once they have said it. */
  said = $state.raw<Candidate | undefined>();
  done = $state(false);
  /** Whether this device keeps the visit. */
  kept = $state(true);
  /** Names this visit among others to the same callout: see `KeptVisit`. */
  #id: string;
  #candidates: readonly Candidate[] | undefined;
  /** Milliseconds spent before this page was opened, and when it was. */
  #spent = 0;
  #opened = Date.now();

  constructor(
    layout: Layout,
    callout: Callout,
    story: Story,
    doubles: readonly Candidate[] = [],
    terms?: VisitTerms,
  ) {
    this.terms = terms;
    this.layout = layout;
    this.callout = callout;
    this.story = story;
    this.doubles = doubles;
    this.system = callout.system;
    this.bench = makeBench(this.system);
    this.visit = $state.raw(begin(this.bench, callout));
    this.#id = `${story.address} ${this.#opened}`;
  }

  readonly setup: Setup = $derived.by(() => this.visit.setup);
  readonly stand: Stand = $derived.by(() => standOf(this.visit));
  readonly entries: readonly Entry[] = $derived.by(() => this.visit.entries);
  readonly settings = $derived.by(() => settingsOf(this.system, this.setup.inputs));
  /** Parts that have terminals, and so a cover over them. */
  readonly enclosures: readonly Part[] = $derived.by(() =>
    this.system.parts.filter(({ kind }) => kind.terminals.length > 0),
  );
  /** Per terminal: whether it is joined to the line of a supply that is on. The live path, for those who ask to see it. */
  readonly live: ReadonlyMap<string, boolean> = $derived.by(() => {
    const { nets } = this.stand;
    const lines = new Set(this.system.supplies.map(({ line }) => nets[line]));
    return new Map(
      this.system.nodes.slice(0, this.system.terminals).map((name, node) => [name, lines.has(nets[node])]),
    );
  });
  /** What the meter shows on the two terminals where its probes are, as last read; undefined before. */
  readonly reading: Reading | undefined = $derived.by(() => {
    const { entries, probes, instrument } = this;
    const entry = entries.findLastIndex(
      ({ act }) =>
        act.do === 'test' &&
        act.test.kind === 'reads' &&
        act.test.instrument === instrument &&
        act.test.between.every((end, lead) => end === probes[lead]),
    );
    const found = entries[entry];
    if (found?.act.do !== 'test' || found.act.test.kind !== 'reads' || found.outcome === undefined)
      return undefined;
    const { between } = found.act.test;
    const fresh = entries.slice(entry + 1).every(asks);
    return { instrument, between, shown: found.outcome, fresh, entry };
  });

  /** Everything that may be wrong. Made when first asked for: on a large system there are thousands. */
  get candidates(): readonly Candidate[] {
    this.#candidates ??= allCandidates(this.system, this.callout.wires, this.doubles);
    return this.#candidates;
  }

  /** The name that this visit is kept under. */
  get id(): string {
    return this.#id;
  }

  /** Milliseconds on this visit so far, over all the times that the page was open. */
  get took(): number {
    return this.#spent + Date.now() - this.#opened;
  }

  /** Whether a part's terminals are hidden under its cover. */
  covered(part: string): boolean {
    return !this.setup.open.has(part);
  }

  /** The id of the part that a terminal belongs to. Throws an Error for an unknown terminal. */
  partAt(terminal: string): string {
    const node = this.system.nodeOf.get(terminal);
    if (node === undefined) throw new Error(`no terminal "${terminal}"`);
    return partOf(this.system, node).id;
  }

  /** Wires of the drawing that end on a terminal and are not lifted. */
  wiresAt(terminal: string): Wire[] {
    return this.setup.wires.filter((wire) => wire.includes(terminal) && !this.setup.lifted.includes(wire));
  }

  /** Does something, for good. Gives its entry in the notebook, or undefined where it cannot be done: `trouble` then says why. */
  do(act: Act): Entry | undefined {
    if (this.done) return undefined;
    let visit: Visit;
    try {
      visit = go(this.bench, this.callout, this.visit, act);
    } catch (error) {
      this.trouble = error instanceof Error ? error.message : String(error);
      return undefined;
    }
    this.visit = visit;
    this.trouble = '';
    const at = visit.entries.length - 1;
    const entry = visit.entries[at];
    if (!entry) return undefined;
    this.message = sayEntry(this.system, entry);
    this.told = [...this.told, ...entry.breaches.map((breach) => ({ entry: at, breach }))];
    if (act.do === 'close') this.#freeProbes(act.part);
    this.#keep();
    return entry;
  }

  /** Puts a probe on a terminal, the one in the hand unless told; with both on, reads. Not through a cover. */
  place(terminal: string, lead: Lead = this.lead): void {
    if (this.done) return;
    const part = this.partAt(terminal);
    if (this.covered(part)) {
      this.trouble = `The cover of the ${partNamed(this.system, part).name.toLowerCase()} is on.`;
      return;
    }
    const other = this.probes[1 - lead] === terminal ? undefined : this.probes[1 - lead];
    this.probes = lead === 0 ? [terminal, other] : [other, terminal];
    this.lead = lead === 0 ? 1 : 0;
    this.trouble = '';
    this.measure();
  }

  /** Reads between the two probes, where both are on. */
  measure(): Entry | undefined {
    const [a, b] = this.probes;
    if (a === undefined || b === undefined) return undefined;
    const { instrument } = this;
    return this.do({ do: 'test', test: { kind: 'reads', instrument, between: [a, b] } });
  }

  /** Takes a probe off its terminal, or both. It is then the lead in the hand. */
  takeOff(lead?: Lead): void {
    const [red, black] = this.probes;
    this.probes =
      lead === undefined ? [undefined, undefined] : lead === 0 ? [undefined, black] : [red, undefined];
    this.lead = lead ?? 0;
  }

  /** Takes another instrument, or another range. The probes come off, so that nothing is read by accident. */
  choose(instrument: Instrument): void {
    if (instrument === this.instrument) return;
    this.instrument = instrument;
    this.takeOff();
  }

  #freeProbes(part: string): void {
    for (const lead of [0, 1] as const) {
      const terminal = this.probes[lead];
      if (terminal !== undefined && this.partAt(terminal) === part) this.takeOff(lead);
    }
  }

  /** Puts away the breaches that stand on the page; the notebook and the result still have them. */
  understand(): void {
    this.told = [];
  }

  /** Whether a training wheel may be turned on: those that were on once may be again. */
  mayUse(wheel: Wheel): boolean {
    return !this.terms || this.wheelsUsed.has(wheel) || this.wheelsUsed.size < this.terms.helps;
  }

  /** Turns a training wheel on or off. That it was on is kept. */
  setWheel(wheel: Wheel, on: boolean): void {
    if (on && !this.mayUse(wheel)) return;
    this.wheels = { ...this.wheels, [wheel]: on };
    if (!on || this.done || this.wheelsUsed.has(wheel)) return;
    this.wheelsUsed = new Set([...this.wheelsUsed, wheel]);
    this.#keep();
  }

  /** Says what is wrong: the visit is over. */
  finish(said: Candidate): void {
    if (this.done) return;
    this.said = said;
    this.done = true;
    this.takeOff();
    this.told = [];
    this.#keep();
  }

  /** Brings a visit back as it was left. What no longer can be done, after a change of this site, is left out with all after it. */
  restore({ id, acts, wheels, took, said, done }: KeptVisit): void {
    this.#id = id;
    this.#spent = took;
    this.#opened = Date.now();
    this.wheelsUsed = new Set(WHEELS.filter((wheel) => wheels.includes(wheel)));
    try {
      for (const act of acts) this.visit = go(this.bench, this.callout, this.visit, act);
    } catch {
      this.message = 'Some of what you did here could not be brought back.';
      return;
    }
    const answer = done ? this.candidates.find(({ id }) => id === said) : undefined;
    this.said = answer;
    this.done = answer !== undefined;
  }

  #keep(): void {
    const visit: KeptVisit = {
      id: this.#id,
      callout: this.story.address,
      acts: this.entries.map(({ act }) => act),
      wheels: [...this.wheelsUsed],
      took: this.took,
      at: Date.now(),
      done: this.done,
      ...(this.said && { said: this.said.id }),
    };
    void (this.terms?.keep ?? keepVisit)(visit).then((kept) => {
      this.kept = kept;
    });
  }
}
