import type { Config, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { circuitOf } from './circuit.ts';
import { solveHalf } from './half.ts';
import { islandsOf } from './islands.ts';
import { ohmsBetween } from './ohms.ts';

/** Nominal supply of a UK dwelling, volts RMS line to neutral (BS EN 60038: 230 V). */
export const SUPPLY_VOLTS = 230;
/** Below this share of its rated current a half-cycle does nothing for a load: a demagnetising leak is 3 %. */
const NO_WORK = 0.1;
/** A diode's branch has no rating of its own: any current above a microamp counts. */
const NO_AMPS = 1e-6;

/** The two halves of the cycle, line positive and line negative, as the signed RMS value of a full wave that high. */
export type Halves = readonly [whileLinePositive: number, whileLineNegative: number];

/** Volts RMS as an instrument shows them. */
export interface Volts {
  readonly volts: number;
  readonly halves: Halves;
}

/** Amps RMS through an element, and which halves of the wave carry at least a tenth of its rated current. */
export interface Amps {
  readonly rms: number;
  readonly halves: Halves;
  readonly wave: 'full' | 'half' | 'none';
}

/** Terminals and inner nodes are named `part/terminal` and `part/(node)`; an unknown name throws an Error. */
export interface Readings {
  /** Volts RMS between two terminals, or 'floating' when no path through wires, contacts and loads ties them together. */
  readonly volts: (a: string, b: string) => Volts | 'floating';
  /**
   * Ohms between two terminals through everything wired to them; Infinity when nothing joins them. The meter's test
   * voltage is taken as too low to open a diode, so a diode counts as open. Throws an Error unless the supply is off.
   */
  readonly ohms: (a: string, b: string) => number;
  /** Current through an element named `part/element`, such as `pump/motor`. */
  readonly amps: (element: string) => Amps;
  /** Whether a direct short has opened the fuse. */
  readonly blown: boolean;
}

/** RMS of a wave whose halves differ: half of the cycle is spent at each. */
export const rmsOf = ([up, down]: Halves): number => Math.sqrt((up * up + down * down) / 2);

/** Puts a meter on a wired system in one configuration. Assumptions: see `circuitOf` and `solveHalf`. */
export function measure(system: System, wires: readonly Wire[], config: Config): Readings {
  const circuit = circuitOf(system, wires, config);
  const { of, count, branches, line, zero } = circuit;
  const island = islandsOf(count, branches, [[line, zero]]);
  // Islands without the source carry no current: all their nets stand at one voltage, which nothing fixes.
  const fed = island.flatMap((name, net) => (name === island[zero] ? [net] : []));
  const up = solveHalf(circuit, fed, SUPPLY_VOLTS);
  const down = solveHalf(circuit, fed, -SUPPLY_VOLTS);
  const netOf = (name: string): number => {
    const node = system.nodeOf.get(name);
    if (node === undefined) throw new Error(`no terminal "${name}"`);
    return of[node]!;
  };

  return {
    blown: circuit.blown,
    volts(a, b) {
      const [from, to] = [netOf(a), netOf(b)];
      if (island[from] !== island[to]) return 'floating';
      const halves: Halves = [up.volts[from]! - up.volts[to]!, down.volts[from]! - down.volts[to]!];
      return { volts: rmsOf(halves), halves };
    },
    ohms(a, b) {
      if (circuit.live) throw new Error('ohms are measured with the supply off');
      return ohmsBetween(circuit, netOf(a), netOf(b));
    },
    amps(element) {
      const k = branches.findIndex(({ name }) => name === element);
      const branch = branches[k];
      if (!branch) throw new Error(`no element "${element}"`);
      const through = ({ volts, ohms }: typeof up) => (volts[branch.a]! - volts[branch.b]!) / ohms[k]!;
      const halves: Halves = [through(up), through(down)];
      const least = branch.diode ? NO_AMPS : (NO_WORK * SUPPLY_VOLTS) / branch.ohms;
      const working = halves.filter((amps) => Math.abs(amps) >= least).length;
      return { rms: rmsOf(halves), halves, wave: (['none', 'half', 'full'] as const)[working]! };
    },
  };
}
