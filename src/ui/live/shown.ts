import type { Settings, SystemSpec } from '../../engine/model/system.ts';
import type { Choice } from '../drawings/desk.svelte.ts';
import type { ScriptStep } from './script.ts';

/** What a lesson shows of a circuit. */
export interface Shown {
  readonly id: string;
  readonly spec: SystemSpec;
  readonly wiring: Choice;
  /** Said of the wiring, where it is not the usual one, and of what has failed. */
  readonly about: string;
  readonly fail: readonly string[];
  readonly start: Settings;
  readonly steps: readonly ScriptStep[];
  /** Whether the switches can be worked: at once, when unfolded, or not. */
  readonly switches: 'open' | 'folded' | 'none';
  /** Whether the pipework can be drawn. */
  readonly pipes: boolean;
  /** Address of the full drawings of this wiring. */
  readonly drawings: string;
}
