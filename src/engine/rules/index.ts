import { acceleratorNeutral } from './accelerator-neutral.ts';
import { crowdedTerminal } from './crowded-terminal.ts';
import { earthed } from './earthed.ts';
import { endSwitchReversed } from './end-switch-reversed.ts';
import { neutralDirect } from './neutral-direct.ts';
import { neutralEarthApart } from './neutral-earth-apart.ts';
import { noHunting } from './no-hunting.ts';
import { noShort } from './no-short.ts';
import { noUncalledHeat } from './no-uncalled-heat.ts';
import { offWhenNotCalled } from './off-when-not-called.ts';
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
  valveShut,
  shutsWithoutSupply,
  runsWhenCalled,
  offWhenNotCalled,
  pathWhenCalled,
  noUncalledHeat,
  noHunting,
];

/** Rules about the wires alone. */
export const wiringRules: readonly WiringRule[] = [
  earthed,
  permanentLine,
  neutralDirect,
  acceleratorNeutral,
  crowdedTerminal,
  endSwitchReversed,
];

/** All rules, for reference pages. */
export const allRules: readonly RuleText[] = [...stateRules, ...wiringRules];
