import type { LoadSpec, PartKind } from '../../engine/model/part.ts';

/** A load as a table shows it. */
export interface LoadRow {
  readonly id: string;
  readonly between: readonly [string, string];
  /** Watts and amps at 230 V, where the meter has a plain resistance for it. */
  readonly watts?: number;
  readonly amps?: number;
  /** What is special about it, in words; empty when nothing is. */
  readonly says: string;
}

/** Nominal supply voltage, V (Electricity Safety, Quality and Continuity Regulations 2002, regulation 27). */
const VOLTS = 230;

function saysOf({ ownLoop, optional, via }: LoadSpec): string {
  if (ownLoop) return 'Fed by the part itself: works when its two terminals are joined.';
  if (optional) return 'The system runs without it.';
  if (via !== undefined) return 'Half of every wave, through the diode.';
  return '';
}

/** The loads of a kind with what they draw, worked out from the resistances that the meter uses. */
export function loadRows({ loads = [], elements = [] }: PartKind): LoadRow[] {
  return loads.map((load) => {
    const element = elements.find(({ id, diode }) => id === load.id && !diode);
    const amps = element && !load.ownLoop ? VOLTS / element.ohms : undefined;
    const { id, between } = load;
    return { id, between, says: saysOf(load), ...(amps !== undefined && { watts: VOLTS * amps, amps }) };
  });
}

/** Two digits that count, without needless noughts. */
const short = (value: number): number => (value >= 10 ? Math.round(value) : Number(value.toPrecision(2)));

/** A load in words: `6 W, 26 mA`. Milliamps below a tenth of an amp. */
export function sayLoad(watts: number, amps: number): string {
  return `${short(watts)} W, ${amps < 0.1 ? `${short(amps * 1000)} mA` : `${short(amps)} A`}`;
}
