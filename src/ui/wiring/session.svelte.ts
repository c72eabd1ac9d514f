import { atWork, directions, evaluate, type Live, partsAtWork } from '../../engine/circuit/plain.ts';
import type { Judging } from '../../engine/grade/judge-for.ts';
import type { Found, Verdict } from '../../engine/grade/verdict.ts';
import { buildSystem } from '../../engine/model/build.ts';
import { type Config, type System, type SystemSpec, settingsOf } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { findKind } from '../../engine/parts/index.ts';
import type { WasHere } from '../../files/conversion.ts';
import * as past from './history.ts';
import { joinedThrough } from './joined.ts';
import { type Kept, keepWires, keptWires } from './keep.ts';
import { Motion } from './motion.svelte.ts';
import { type Frame, framesOf } from './walk.ts';

export interface JobData {
  readonly id: string;
  readonly title: string;
  readonly brief: string;
  readonly given: readonly Wire[];
  readonly locked: boolean;
  /** A conversion: what was here before. The given wires are the old ones. */
  readonly was?: WasHere | undefined;
  /** The address of its sheets to print, where it has some. */
  readonly paper?: string;
}

/** One learner at one job: the wires, the switches, what the judge said. All views read and change this. */
export class Session {
  readonly system: System;
  readonly job: JobData;
  #judge: Judging | undefined;
  readonly #keep: (wires: readonly Wire[]) => Kept;
  readonly #lockedKeys: ReadonlySet<string>;
  readonly #oldKeys: ReadonlySet<string>;
  readonly motion: Motion;

  #history = $state.raw(past.begin([]));
  #config = $state.raw<Config>({ inputs: 0, place: 0 });
  /** The lead or terminal picked up, waiting for its other end. */
  hand = $state<string | undefined>();
  /** The wire or terminal whose joints stand out. */
  lit = $state<string | undefined>();
  /** The wire chosen, ready to be taken out. */
  chosen = $state<string | undefined>();
  verdict = $state.raw<Verdict | undefined>();
  finding = $state(0);
  walk = $state.raw<readonly Frame[]>([]);
  step = $state(0);
  kept = $state<Kept>('kept');
  message = $state('');

  /** Wires are kept on the device under the job's id, unless told. */
  constructor(
    spec: SystemSpec,
    job: JobData,
    keep: (wires: readonly Wire[]) => Kept = (wires) => keepWires(job.id, wires),
  ) {
    this.system = buildSystem(spec, findKind);
    this.job = job;
    this.#keep = keep;
    this.#lockedKeys = new Set(job.locked ? job.given.map(wireKey) : []);
    this.#oldKeys = new Set(job.was ? job.given.map(wireKey) : []);
    this.#history = past.begin([...job.given]);
    this.motion = new Motion(
      this.system,
      () => ({ system: this.system, wires: this.wires, config: this.#config }),
      (place) => {
        this.#config = { ...this.#config, place };
      },
    );
  }

  readonly wires = $derived(past.current(this.#history));
  readonly keys = $derived(new Set(this.wires.map(wireKey)));
  readonly live: Live = $derived.by(() => evaluate(this.system, this.wires, this.config));
  readonly fires = $derived.by(() => atWork(this.system, this.live, 'fires'));
  readonly pumps = $derived.by(() => atWork(this.system, this.live, 'pumps'));
  /** Ids of the parts at work. */
  readonly working = $derived.by(() => partsAtWork(this.system, this.live));
  readonly directions = $derived.by(() => directions(this.system, this.live, this.config.place));
  readonly settings = $derived.by(() => settingsOf(this.system, this.config.inputs));
  readonly canUndo = $derived(past.canUndo(this.#history));
  readonly canRedo = $derived(past.canRedo(this.#history));
  readonly found: Found | undefined = $derived(this.verdict?.findings[this.finding]);
  /** How many wires are the learner's own, to take out or leave. */
  readonly own = $derived.by(() => this.wires.filter((wire) => !this.isLocked(wireKey(wire))).length);
  /** What stands out, and everything joined to it through wires alone: what is pointed at, held or chosen. */
  readonly shining: string | undefined = $derived(this.lit ?? this.hand ?? this.chosen);
  readonly joined: ReadonlySet<string> = $derived(joinedThrough(this.wires, this.shining));

  /** Titles of the rules that a judged wiring was held against. */
  proved = $state.raw<readonly string[]>([]);

  get config(): Config {
    return this.#config;
  }

  /** Names of the terminals a terminal is wired to. */
  landed(terminal: string): string[] {
    return this.wires.flatMap(([a, b]) => (a === terminal ? [b] : b === terminal ? [a] : []));
  }

  isLocked(key: string): boolean {
    return this.#lockedKeys.has(key);
  }

  /** Whether a wire is from the wiring that was here before. */
  isOld(key: string): boolean {
    return this.#oldKeys.has(key);
  }

  /** Brings back what was kept on this device, or starts with the given wires. */
  restore(shared?: readonly Wire[]): void {
    const terminals = new Map([...this.system.nodeOf].filter(([, node]) => node < this.system.terminals));
    const wires = keptWires(this.job.id, terminals);
    if (wires) this.#replace(this.#withGiven(wires));
    if (shared) this.#replace(this.#withGiven(shared));
  }

  #withGiven(wires: readonly Wire[]): readonly Wire[] {
    const locked = this.job.locked ? this.job.given : [];
    return locked.reduce<readonly Wire[]>((sum, wire) => past.withWire(sum, wire), wires);
  }

  #replace(wires: readonly Wire[]): void {
    this.#put(past.record(this.#history, wires));
  }

  #put(history: past.History): void {
    if (history === this.#history) return;
    this.#history = history;
    this.kept = this.#keep(this.wires);
    this.verdict = undefined;
    this.chosen = undefined;
    this.leaveWalk();
    this.motion.run();
  }

  /** Joins two terminals. Joining what is joined already chooses that wire instead. */
  join(a: string, b: string): void {
    this.hand = undefined;
    if (a === b) return;
    const key = wireKey([a, b]);
    if (this.keys.has(key)) this.chosen = key;
    else this.#replace(past.withWire(this.wires, [a, b]));
    this.lit = undefined;
  }

  /** Picks a terminal up, or lands what is in hand on it. */
  touch(terminal: string): void {
    this.chosen = undefined;
    if (this.hand === undefined) this.hand = terminal;
    else if (this.hand === terminal) this.hand = undefined;
    else this.join(this.hand, terminal);
  }

  remove(key: string): void {
    if (this.isLocked(key)) this.message = 'This wire belongs to the job: it stays.';
    else this.#replace(past.withoutWire(this.wires, key));
  }

  clear(): void {
    this.#replace(this.job.locked ? [...this.job.given] : []);
  }

  load(wires: readonly Wire[]): void {
    this.#replace(this.#withGiven(wires));
  }

  undo(): void {
    this.#put(past.undo(this.#history));
  }

  redo(): void {
    this.#put(past.redo(this.#history));
  }

  /** Sets a switch; whatever walk was on ends here, and the valves go on from where they stand. */
  set(input: number, active: boolean): void {
    const inputs = active ? this.#config.inputs | (1 << input) : this.#config.inputs & ~(1 << input);
    this.leaveWalk();
    this.#config = { ...this.#config, inputs };
    this.motion.run();
  }

  /** Judges the wiring as it stands and goes to the first failing state. */
  async judge(): Promise<void> {
    this.hand = undefined;
    this.chosen = undefined;
    if (!this.#judge) {
      try {
        const { judgeOf, provedTitles } = await import('./judging.ts');
        this.#judge = await judgeOf(this.system);
        this.proved = provedTitles;
      } catch {
        this.message =
          'The judge could not be fetched. Your wires are kept: press again when you are online.';
        return;
      }
    }
    this.verdict = this.#judge.judge(this.wires);
    this.choose(0);
  }

  /** Goes to the state of a finding. */
  choose(finding: number): void {
    this.finding = finding;
    const found = this.verdict?.findings[finding];
    this.walk = found && found.way.length > 0 ? framesOf(this.system, found) : [];
    if (this.walk.length > 0) this.goTo(this.walk.length - 1);
  }

  goTo(step: number): void {
    const frame = this.walk[step];
    if (!frame) return;
    this.step = step;
    this.show(frame.config);
  }

  /** Shows a state as it is, the valves held where it says. */
  show(config: Config): void {
    this.#config = config;
    this.motion.place(config.place);
  }

  leaveWalk(): void {
    this.walk = [];
  }
}
