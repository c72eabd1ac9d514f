import { dischargePipeLength } from './discharge-pipe-length.ts';
import { dischargePipeSize } from './discharge-pipe-size.ts';
import { expansion } from './expansion.ts';
import { flowRate } from './flow-rate.ts';
import { fuseCurrent } from './fuse-current.ts';
import { gasPressure } from './gas-pressure.ts';
import { heatEnergy } from './heat-energy.ts';
import { heatPower } from './heat-power.ts';
import type { Sum } from './kit.ts';
import { loopResistanceSum } from './loop-resistance.ts';
import { pipeElbows } from './pipe-elbows.ts';
import { r1PlusR2 } from './r1-plus-r2.ts';
import { reheatTime } from './reheat-time.ts';
import { tableDropSum } from './table-drop.ts';
import { vessel } from './vessel.ts';
import { voltDrop } from './volt-drop.ts';

/** Every sum that a task may name. */
export const sums: readonly Sum[] = [
  dischargePipeLength,
  pipeElbows,
  dischargePipeSize,
  expansion,
  vessel,
  gasPressure,
  heatEnergy,
  reheatTime,
  heatPower,
  flowRate,
  fuseCurrent,
  voltDrop,
  tableDropSum,
  r1PlusR2,
  loopResistanceSum,
];

/**
 * The sum of this name.
 * @throws RangeError that names the sum when there is none
 */
export function findSum(id: string): Sum {
  const sum = sums.find((one) => one.id === id);
  if (!sum) throw new RangeError(`expected one of ${sums.map((one) => one.id).join(', ')}, found "${id}"`);
  return sum;
}
