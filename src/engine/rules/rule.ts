import type { Settings } from '../model/system.ts';
import type { Ground, LiveSets } from './sets-view.ts';
import type { StateView } from './view.ts';
import type { WiringView } from './wiring-view.ts';

/** A danger or a fault rejects a wiring; advice never does. */
export type Severity = 'danger' | 'fault' | 'advice';

export interface RuleText {
  /** Stable name: attempt files and mark books keep it. */
  readonly id: string;
  /** What holds when the rule is kept. */
  readonly title: string;
  /** What is wrong when it is broken, for lists. */
  readonly fails: string;
  readonly severity: Severity;
  /** Where the rule comes from, with the edition. */
  readonly source: string;
  /** Which function is broken: the second level of help. */
  readonly function: string;
  /** What to compare with what: the third level of help. */
  readonly compare: string;
}

/** What a rule says of a culprit it found. */
export interface Explanation {
  readonly says: string;
  /** The path that carried the voltage, or the place where it stops. */
  readonly terminals: readonly string[];
  /** What to compare, where this culprit asks for something else than the rule does in general. */
  readonly compare?: string;
}

/** A rule about what happens in a state. `broken` defines it for one state; `where` is the same for all at once. */
export interface StateRule extends RuleText {
  /** Which states it speaks of: those at rest, or every one met on the way too. */
  readonly scope: 'rest' | 'met';
  readonly broken: (state: StateView) => boolean;
  /**
   * States that break it; the caller keeps only those in scope. What does not depend on the wiring is worked out once,
   * by the first call; the second is asked for every wiring.
   */
  readonly where: <T>(ground: Ground<T>) => (live: LiveSets<T>) => T;
  readonly explain: (state: StateView) => Explanation;
}

/** A rule about the wires themselves, whatever the state. */
export interface WiringRule extends RuleText {
  readonly find: (view: WiringView) => Explanation | undefined;
}

export interface Finding extends RuleText {
  readonly says: string;
  readonly terminals: readonly string[];
  /** Settings of the first failing state. */
  readonly inputs: Settings;
  /** Switch moves from cold, each the settings changed together; the valves come to rest after each. */
  readonly steps: readonly Settings[];
}
