import { acceleratorNeutral } from './accelerator-neutral.ts';
import { circuitsApart } from './circuits-apart.ts';
import { contactRating } from './contact-rating.ts';
import { crowdedTerminal } from './crowded-terminal.ts';
import { cutOutStopsHeat } from './cut-out-stops-heat.ts';
import { earthed } from './earthed.ts';
import { endSwitchReversed } from './end-switch-reversed.ts';
import { extraLowApart } from './extra-low-apart.ts';
import { fuseRating } from './fuse-rating.ts';
import { greenYellowLive } from './green-yellow-live.ts';
import { hotWaterPriority } from './hot-water-priority.ts';
import { mainsOnExtraLow } from './mains-on-extra-low.ts';
import { minimumFlow } from './minimum-flow.ts';
import { neutralDirect } from './neutral-direct.ts';
import { neutralEarthApart } from './neutral-earth-apart.ts';
import { noHunting } from './no-hunting.ts';
import { noShort } from './no-short.ts';
import { noUncalledHeat } from './no-uncalled-heat.ts';
import { offWhenNotCalled } from './off-when-not-called.ts';
import { overrunCarried } from './overrun-carried.ts';
import { pathWhenCalled } from './path-when-called.ts';
import { permanentLine } from './permanent-line.ts';
import type { RuleText, StateRule, WiringRule } from './rule.ts';
import { runsWhenCalled } from './runs-when-called.ts';
import { shutsWithoutSupply } from './shuts-without-supply.ts';
import { valveShut } from './valve-shut.ts';

/** Rules about states, the gravest first. */
export const stateRules: readonly StateRule[] = [
  noShort,
  neutralEarthApart,
  greenYellowLive,
  mainsOnExtraLow,
  circuitsApart,
  cutOutStopsHeat,
  valveShut,
  shutsWithoutSupply,
  runsWhenCalled,
  offWhenNotCalled,
  pathWhenCalled,
  noUncalledHeat,
  hotWaterPriority,
  minimumFlow,
  overrunCarried,
  noHunting,
];

/** Rules about the wires alone. */
export const wiringRules: readonly WiringRule[] = [
  earthed,
  permanentLine,
  neutralDirect,
  extraLowApart,
  contactRating,
  fuseRating,
  acceleratorNeutral,
  crowdedTerminal,
  endSwitchReversed,
];

/** All rules, for reference pages. */
export const allRules: readonly RuleText[] = [...stateRules, ...wiringRules];
