import type { Calculator } from './calculator.ts';
import { dischargePipeCalculator } from './discharge-pipe.ts';
import { expansionVesselCalculator } from './expansion-vessel.ts';
import { fuseSumCalculator } from './fuse-sum.ts';
import { loopResistanceCalculator } from './loop-resistance.ts';
import { reheatCalculator } from './reheat.ts';
import { voltDropCalculator } from './volt-drop.ts';

/** Every calculator, plumbing first. */
export const calculators: readonly Calculator[] = [
  dischargePipeCalculator,
  expansionVesselCalculator,
  reheatCalculator,
  fuseSumCalculator,
  voltDropCalculator,
  loopResistanceCalculator,
];
