import type { SystemSpec } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';

/** A layout of the library, with its right wirings. */
export interface BenchLayout {
  readonly spec: SystemSpec;
  readonly references: readonly {
    readonly id: string;
    readonly title: string;
    readonly wires: readonly Wire[];
  }[];
}
