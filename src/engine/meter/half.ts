import type { Branch, Circuit } from './circuit.ts';
import { nodal } from './nodal.ts';

/** Assumption: a diode the wrong way round leaks like this many ohms, enough to leave no net without an answer. */
const REVERSE_OHMS = 1e12;
/** Volts across a diode, or its series ohms, that still count as none: far below anything a meter shows. */
const NOTHING = 1e-6;

/** One half of the mains cycle solved: volts per net, reckoned from 0 V, and the ohms each branch has in this half (a diode that blocks has many). */
export interface Half {
  readonly volts: Float64Array;
  readonly ohms: readonly number[];
}

/**
 * Solves one half-cycle with the line at `supply` volts. Everything is resistive and diodes are ideal switches, so
 * the same diodes conduct throughout a half-cycle and all volts keep step with the line: one solution stands for
 * the whole half. Each set of conducting diodes is tried until one agrees with itself.
 */
export function solveHalf(
  { count, branches, line, zero }: Circuit,
  among: readonly number[],
  supply: number,
): Half {
  const diodes = branches.filter(({ diode }) => diode);
  // After a short, line and zero are one net: the later entry stands, 0 V.
  const given = {
    volts: new Map([
      [line, supply],
      [zero, 0],
    ]),
  };
  for (let set = 0; set < 2 ** diodes.length; set++) {
    const conducts = (branch: Branch) => !branch.diode || ((set >> diodes.indexOf(branch)) & 1) === 1;
    const ohms = branches.map((branch) => (conducts(branch) ? branch.ohms : REVERSE_OHMS));
    const conductances = branches.map(({ a, b }, k) => ({ a, b, siemens: 1 / ohms[k]! }));
    const volts = nodal(count, among, conductances, given);
    const agrees = diodes.every((diode) => {
      const forward = volts[diode.a]! - volts[diode.b]!;
      return conducts(diode) ? forward >= -NOTHING : forward <= NOTHING;
    });
    if (agrees) return { volts, ohms };
  }
  throw new Error('no set of conducting diodes agrees with itself');
}
