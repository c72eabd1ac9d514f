import { atWork, directions, evaluate, partsAtWork } from '../../engine/circuit/plain.ts';
import { failPlace, failSystem, failWires } from '../../engine/faults/apply.ts';
import { allFailures, type Failure, failureId } from '../../engine/faults/failure.ts';
import { type Config, type System, settingsOf } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { Motion } from '../wiring/motion.svelte.ts';

/** One wiring with parts of it failed by hand: the switches still work, the valves still move as far as they can. */
export class Trial {
  readonly system: System;
  readonly #wires: () => readonly Wire[];
  readonly motion: Motion;
  failed = $state.raw<readonly string[]>([]);
  config = $state.raw<Config>({ inputs: 0, place: 0 });

  constructor(system: System, wires: () => readonly Wire[]) {
    this.system = system;
    this.#wires = wires;
    this.motion = new Motion(
      system,
      () => ({ system: this.now, wires: this.whole, config: this.config }),
      (place) => {
        this.config = { ...this.config, place };
      },
    );
  }

  readonly possible: readonly Failure[] = $derived.by(() => allFailures(this.system, this.#wires()));
  readonly failures: readonly Failure[] = $derived(
    this.possible.filter((failure) => this.failed.includes(failureId(this.system, failure))),
  );
  /** The system as the failures leave it, and the wires that are whole. */
  readonly now: System = $derived.by(() => failSystem(this.system, this.failures));
  readonly whole: readonly Wire[] = $derived.by(() => failWires(this.#wires(), this.failures));
  readonly live = $derived(evaluate(this.now, this.whole, this.config));
  readonly fires = $derived(atWork(this.now, this.live, 'fires'));
  readonly pumps = $derived(atWork(this.now, this.live, 'pumps'));
  readonly working = $derived(partsAtWork(this.now, this.live));
  readonly directions = $derived(directions(this.now, this.live, this.config.place));
  readonly settings = $derived.by(() => settingsOf(this.system, this.config.inputs));
  readonly moving = $derived.by(() =>
    Object.fromEntries(
      this.system.movers.map(({ part }, m) => [this.system.parts[part]!.id, this.motion.shown[m] ?? 0]),
    ),
  );

  set(input: number, active: boolean): void {
    const inputs = active ? this.config.inputs | (1 << input) : this.config.inputs & ~(1 << input);
    this.config = { ...this.config, inputs };
    this.motion.run();
  }

  /** Fails a part, or mends it again. */
  toggle(id: string): void {
    this.fail(this.failed.includes(id) ? this.failed.filter((other) => other !== id) : [...this.failed, id]);
  }

  /** Lets exactly these have failed; a stuck valve jumps to where it is stuck. */
  fail(ids: readonly string[]): void {
    this.failed = ids;
    this.config = { ...this.config, place: failPlace(this.system, this.failures, this.config.place) };
    this.motion.place(this.config.place);
    this.motion.run();
  }

  /** Goes to a state with these failures. */
  play(ids: readonly string[], config: Config): void {
    this.failed = ids;
    this.config = config;
    this.motion.place(config.place);
    this.motion.run();
  }
}
