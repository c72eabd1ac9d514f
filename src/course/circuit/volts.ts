import { measure } from '../../engine/meter/measure.ts';
import type { Standing } from './standing.ts';

/** Volts RMS below which a tester shows nothing. */
const NOTHING = 5;

/**
 * Tells of a node that is not joined to line whether a tester finds nothing at it either. Through a motor, a diode or
 * a resistor there may be enough to hurt, and such a terminal must be called neither live nor dead.
 */
export function findsNothing({ system, wires, config }: Standing): (node: number) => boolean {
  const { volts } = measure(system, wires, config);
  const neutral = system.nodes[system.supply.neutral] ?? '';
  return (node) => {
    const reading = volts(system.nodes[node] ?? '', neutral);
    return reading === 'floating' || reading.volts < NOTHING;
  };
}
