import { type Config, partState, type System } from '../../src/engine/model/system.ts';
import type { Wire } from '../../src/engine/model/wiring.ts';

/** Ohms of a wire, of a closed contact, and of the joints at the source: next to nothing beside any load. */
const JOINT_OHMS = 1e-3;
/**
 * A node that nothing feeds has no voltage of its own, and ngspice refuses it. Each node therefore leaks through
 * this to `stray`: 0 V unless told, so that what floats reads about 0 V. Against the largest load here, 270 kΩ,
 * it is 1 part in 3700.
 */
const BLEED_OHMS = 1e9;
/** Peak of 230 V RMS. */
const PEAK = 230 * Math.SQRT2;
/** A silicon diode that drops about 0.45 V here, 0.14 % of the peak: the meter takes it as none. Value from memory. */
const DIODE = '.model silicon d(is=1e-9 n=1)';

export interface Options {
  /** Volts RMS that the bleeds lead to: what a floating core picks up from its neighbours. */
  readonly stray?: number;
  /**
   * Power factor of the valves' motors, 1 unless told. Nobody publishes it for these synchronous motors; below 1
   * the winding is a resistor and an inductor of the same impedance at 50 Hz.
   */
  readonly powerFactor?: number;
}

/** The vector that holds the voltage of a node to the incoming neutral. */
export const voltsName = (node: number): string => `v(n${node})`;
/** The vector that holds the current through an element named `part/element`, from its first end to its second. */
export const ampsName = (element: string): string => `i(vm_${element.replace(/[^a-z0-9]/gi, '_')})`;

/**
 * The same wired system for ngspice, written without the meter's help: every terminal is a node of its own, every
 * wire and closed contact a resistor, every element what the part's data says. Mains of 50 Hz; neutral and earth are
 * joined to ground at the source. One cycle is saved, after `settle` cycles.
 */
export function netlist(
  system: System,
  wires: readonly Wire[],
  config: Config,
  { stray = 0, powerFactor = 1 }: Options = {},
): string[] {
  const { supply, nodeOf, parts } = system;
  const lines = [
    DIODE,
    `Vmains n${supply.line} 0 sin(0 ${PEAK} 50)`,
    `Rneutral n${supply.neutral} 0 ${JOINT_OHMS}`,
    `Rearth n${supply.earth} 0 ${JOINT_OHMS}`,
    `Vstray stray 0 sin(0 ${stray * Math.SQRT2} 50)`,
    ...system.nodes.map((_, k) => `Rbleed${k} n${k} stray ${BLEED_OHMS}`),
    ...wires.map(([a, b], k) => `Rwire${k} n${nodeOf.get(a)} n${nodeOf.get(b)} ${JOINT_OHMS}`),
  ];
  const saved = [...system.nodes.map((_, k) => voltsName(k)), 'i(vmains)'];
  for (const part of parts) {
    const node = (end: string) => nodeOf.get(`${part.id}/${end}`) ?? nodeOf.get(`${part.id}/(${end})`);
    const name = (what: string) => `${part.id}/${what}`.replace(/[^a-z0-9]/gi, '_');
    const state = partState(system, part, config);
    for (const { id, between, closed } of part.kind.contacts ?? []) {
      if (closed(state)) lines.push(`R_${name(id)} n${node(between[0])} n${node(between[1])} ${JOINT_OHMS}`);
    }
    for (const { id, between, ohms, diode } of part.kind.elements ?? []) {
      const [from, to, own] = [node(between[0]), node(between[1]), name(id)];
      // A source of 0 V in series is ngspice's ammeter.
      lines.push(`Vm_${own} n${from} ${own}_1 0`);
      const winding = part.kind.motion !== undefined && id === part.kind.motion.drive && powerFactor < 1;
      if (diode) lines.push(`D_${own} ${own}_1 ${own}_2 silicon`, `R_${own} ${own}_2 n${to} ${ohms}`);
      else if (winding) {
        const henries = (ohms * Math.sqrt(1 - powerFactor ** 2)) / (2 * Math.PI * 50);
        lines.push(`L_${own} ${own}_1 ${own}_2 ${henries}`, `R_${own} ${own}_2 n${to} ${ohms * powerFactor}`);
      } else lines.push(`R_${own} ${own}_1 n${to} ${ohms}`);
      saved.push(ampsName(`${part.id}/${id}`));
    }
  }
  // A resistive circuit is in step from the start; a winding's first inrush dies within three cycles.
  const settle = powerFactor < 1 ? 5 : 1;
  return [
    ...lines,
    // Rounding in a milliohm at 230 V leaves picoamps unsure: a tenth of a nanoamp counts as none.
    '.options reltol=1e-4 abstol=1e-10',
    `.save ${saved.join(' ')}`,
    `.tran 100u ${(settle + 1) * 20}m ${settle * 20}m 100u`,
  ];
}
