import type { Hazard } from '../hazard.ts';
import { firesNowhere } from './fires-nowhere.ts';
import { heatingStaysOn } from './heating-stays-on.ts';
import { liveCase } from './live-case.ts';
import { uncontrolledHeat } from './uncontrolled-heat.ts';

/** All hazards, the gravest first. */
export const hazards: readonly Hazard[] = [uncontrolledHeat, liveCase, firesNowhere, heatingStaysOn];
