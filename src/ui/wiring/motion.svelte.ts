import { directions, evaluate } from '../../engine/circuit/plain.ts';
import { type Config, positionIndex, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** Seconds a valve takes from one position to the next: quicker than on site (10 to 20 s open, 5 to 10 s shut). */
const DRIVEN = 1.3;
const SPRUNG = 0.8;

/** What moves: the system as it is now (parts of it may have failed), its wires and its state. */
export interface Moving {
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly config: Config;
}

/** Lets the valves travel in visible time: positions as fractions for the eye, whole places for the circuit. */
export class Motion {
  /** Per mover: where it is drawn, between its positions. */
  shown = $state<number[]>([]);
  /** Where each mover is on its way, shown or not. */
  #at: number[] = [];
  #frame = 0;
  #last = 0;
  readonly #system: System;
  readonly #read: () => Moving;
  readonly #arrive: (place: number) => void;

  constructor(system: System, read: () => Moving, arrive: (place: number) => void) {
    this.#system = system;
    this.#read = read;
    this.#arrive = arrive;
    this.place(0);
  }

  /** Puts every valve where the place says, at once. */
  place(place: number): void {
    this.stop();
    this.#at = this.#system.movers.map((mover) => positionIndex(mover, place));
    this.shown = this.#at;
  }

  #still(): boolean {
    return matchMedia('(prefers-reduced-motion: reduce)').matches;
  }

  /** Lets the valves run until they come to rest. */
  run(): void {
    if (this.#frame) return;
    this.#last = 0;
    this.#frame = requestAnimationFrame((now) => this.#tick(now));
  }

  stop(): void {
    if (this.#frame) cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  #tick(now: number): void {
    const seconds = this.#last ? Math.min(0.1, (now - this.#last) / 1000) : 0;
    this.#last = now;
    const { system, wires, config } = this.#read();
    const ways = directions(system, evaluate(system, wires, config), config.place);
    let busy = false;
    const shown = this.#system.movers.map((mover, m) => {
      const at = positionIndex(mover, config.place);
      const from = this.#at[m] ?? at;
      const goal = at + ways[m]!;
      if (goal === at && from === at) return at;
      busy = true;
      const pace = seconds / (goal > from ? DRIVEN : SPRUNG);
      return goal > from ? Math.min(goal, from + pace) : Math.max(goal, from - pace);
    });
    this.#at = shown;
    // With less motion wanted, a valve is seen where it stands and steps to the next stop when it arrives.
    this.shown = this.#still()
      ? this.#system.movers.map((mover) => positionIndex(mover, config.place))
      : shown;
    // The first valve to reach a new position changes the circuit; the others go on from where they are.
    const arrived = this.#system.movers.findIndex(
      (mover, m) => shown[m] !== positionIndex(mover, config.place) && Number.isInteger(shown[m]),
    );
    if (arrived >= 0) {
      const mover = this.#system.movers[arrived]!;
      this.#arrive(config.place + (shown[arrived]! - positionIndex(mover, config.place)) * mover.stride);
    }
    this.#frame = busy ? requestAnimationFrame((next) => this.#tick(next)) : 0;
  }
}
