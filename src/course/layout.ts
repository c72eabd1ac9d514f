import type { System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';

/** A right wiring of a layout. */
export interface RightWiring {
  readonly id: string;
  readonly title: string;
  readonly wires: readonly Wire[];
}

/** A classic wrong wiring of a layout, and the ids of the rules that it breaks. */
export interface WrongWiring extends RightWiring {
  /** What is wrong, in a sentence. */
  readonly says: string;
  readonly breaks: readonly string[];
}

/** A layout as questions need it: the system made ready for the engine, and its known wirings. */
export interface Layout {
  readonly id: string;
  readonly title: string;
  /** Trade nicknames. */
  readonly alsoCalled: readonly string[];
  readonly system: System;
  /** At least one; the first is the one that lessons show. */
  readonly right: readonly RightWiring[];
  readonly wrong: readonly WrongWiring[];
}
