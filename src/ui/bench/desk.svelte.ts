import { bitsOf, type SystemPart, type SystemSpec } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { type Bench, hasPartsOf } from '../../files/bench.ts';
import { benchSpec, layoutSpec } from '../../files/bench-spec.ts';
import type { Kept } from '../wiring/keep.ts';
import { Session } from '../wiring/session.svelte.ts';
import { forgetBench, freshId, type KeptBench, keepBench, keepOpen, keptBenches } from './keep.ts';
import type { BenchLayout } from './library.ts';

/** Undo reaches back this far. */
const DEPTH = 200;

const keysOf = (wires: readonly Wire[]): string => wires.map(wireKey).join();

/** All benches of this device, the one that is open with what was done to it, and its wiring as a session. */
export class Desk {
  library = $state.raw<readonly BenchLayout[]>([]);
  benches = $state.raw<readonly KeptBench[]>([]);
  id = $state('');
  #states = $state.raw<readonly Bench[]>([]);
  #at = $state(0);
  session = $state.raw<Session | undefined>();
  kept = $state<Kept>('kept');
  message = $state('');
  /** The bench deleted last, which can be brought back. */
  deleted = $state.raw<KeptBench | undefined>();

  readonly bench: Bench | undefined = $derived(this.#states[this.#at]);
  readonly canUndo = $derived(this.#at > 0);
  readonly canRedo = $derived(this.#at < this.#states.length - 1);
  /** The layout whose pipes and calls the bench has; undefined on a free one. */
  readonly layout: BenchLayout | undefined = $derived(
    this.library.find(
      ({ spec }) => this.bench && spec.id === this.bench.layout && hasPartsOf(this.bench, spec),
    ),
  );

  /** Brings back what is kept on this device and opens what was open. */
  restore(): void {
    const { benches, open } = keptBenches();
    this.benches = benches;
    const last = benches.find(({ id }) => id === open) ?? benches[0];
    if (last) this.open(last.id);
  }

  open(id: string): void {
    const found = this.benches.find((one) => one.id === id);
    if (!found) return;
    this.id = id;
    this.#states = [found.bench];
    this.#at = 0;
    this.#seat();
    keepOpen(id);
  }

  /** Puts a new bench beside the others and opens it. */
  add(bench: Bench): void {
    const id = freshId();
    this.benches = [...this.benches, { id, bench }];
    this.open(id);
    this.#keep();
  }

  /** Deletes the open bench; `bringBack` undoes it. */
  delete(): void {
    const gone = this.benches.find(({ id }) => id === this.id);
    if (!gone) return;
    this.deleted = gone;
    forgetBench(gone.id);
    this.benches = this.benches.filter(({ id }) => id !== gone.id);
    const [next] = this.benches;
    if (next) this.open(next.id);
    else {
      this.session?.motion.stop();
      this.session = undefined;
      this.id = '';
      this.#states = [];
    }
    this.message = `“${gone.bench.name}” is deleted.`;
  }

  bringBack(): void {
    const { deleted } = this;
    if (!deleted) return;
    this.deleted = undefined;
    this.benches = [...this.benches, deleted];
    this.open(deleted.id);
    this.#keep();
    this.message = `“${deleted.bench.name}” is back.`;
  }

  /** Changes the open bench; what was there before can be brought back. */
  change(change: Partial<Bench>): void {
    if (!this.bench) return;
    const { layout, ...next } = { ...this.bench, ...change };
    const free = layout === undefined || !this.#spec(layout, next.parts);
    this.message =
      free && this.layout
        ? 'The parts are no longer those of the layout: this is a free bench now, with no pipes and no calls. Undo brings the layout back.'
        : '';
    this.#record(free ? next : { ...next, layout });
    if (change.parts) this.#seat();
  }

  undo(): void {
    if (this.canUndo) this.#goTo(this.#at - 1);
  }

  redo(): void {
    if (this.canRedo) this.#goTo(this.#at + 1);
  }

  /** The layout's spec where these parts are its own. */
  #spec(layout: string, parts: Readonly<Record<string, SystemPart>>): SystemSpec | undefined {
    const found = this.library.find(({ spec }) => spec.id === layout);
    return found && hasPartsOf({ parts }, found.spec) ? found.spec : undefined;
  }

  #record(bench: Bench): void {
    this.#states = [...this.#states.slice(0, this.#at + 1), bench].slice(-DEPTH);
    this.#at = this.#states.length - 1;
    this.#keep();
  }

  #goTo(at: number): void {
    const before = this.bench;
    this.#at = at;
    const now = this.bench;
    if (!now) return;
    this.message = '';
    this.#keep();
    if (this.session && before?.parts === now.parts && before.layout === now.layout)
      this.session.load(now.wires);
    else this.#seat();
  }

  #keep(): void {
    const { bench, id } = this;
    if (!bench) return;
    this.benches = this.benches.map((one) => (one.id === id ? { id, bench } : one));
    this.kept = keepBench({ id, bench });
    keepOpen(id);
  }

  /** Wires that the session has changed: they go on record unless they came from there. */
  #wired(wires: readonly Wire[]): Kept {
    if (this.bench && keysOf(wires) !== keysOf(this.bench.wires)) {
      this.message = '';
      this.#record({ ...this.bench, wires });
    }
    return this.kept;
  }

  /** Makes the session of the open bench, the switches as they were wherever they are still there. */
  #seat(): void {
    const { bench } = this;
    if (!bench) return;
    const settings = this.session?.settings ?? {};
    this.session?.motion.stop();
    const layout = bench.layout === undefined ? undefined : this.#spec(bench.layout, bench.parts);
    const spec = layout ? layoutSpec(layout, bench.parts) : benchSpec(bench);
    const job = { id: this.id, title: bench.name, brief: '', given: bench.wires, locked: false };
    const session = new Session(spec, job, (wires) => this.#wired(wires));
    session.show({ inputs: bitsOf(session.system, settings), place: 0 });
    session.motion.run();
    this.session = session;
  }
}
