/** Copper conductor of a fixed cable (solid or stranded, classes 1 and 2) or of a flex (fine strands, class 5). */
export type Conductor = 'cable' | 'flex';

/** IEC 60228: mm², then ohms per kilometre at 20 °C, which is mΩ for each metre. */
const OHMS_PER_KM: Readonly<Record<Conductor, ReadonlyMap<number, number>>> = {
  cable: new Map([
    [0.75, 24.5],
    [1, 18.1],
    [1.5, 12.1],
    [2.5, 7.41],
  ]),
  flex: new Map([
    [0.5, 39],
    [0.75, 26],
    [1, 19.5],
    [1.5, 13.3],
  ]),
};

/** Copper at 70 °C against 20 °C (IEC 60228 correction list). */
export const WARM_FACTOR = 1.2;

export const RESISTANCE_SOURCE = 'IEC 60228, conductor resistance at 20 °C';

/** Cross-sections that the table holds, mm², smallest first. */
export const sectionsOf = (kind: Conductor): readonly number[] => [...OHMS_PER_KM[kind].keys()];

/**
 * Resistance of a conductor at 20 °C, mΩ for each metre.
 * @throws RangeError when the table has no such cross-section
 */
export function milliohmsPerMetre(kind: Conductor, mm2: number): number {
  const found = OHMS_PER_KM[kind].get(mm2);
  if (found === undefined) {
    throw new RangeError(`Cross-section of a ${kind}: one of ${sectionsOf(kind).join(', ')} mm², not ${mm2}`);
  }
  return found;
}
