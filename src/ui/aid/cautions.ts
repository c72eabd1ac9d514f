import { partNamed, type System } from '../../engine/model/system.ts';
import type { NextTest } from './next.ts';

/** What to mind before a test, and where it comes from. */
export interface Caution {
  readonly says: string;
  readonly source: string;
}

/** Safe isolation, step by step (common practice; HSE guidance note GS38, 4th edition, 2015, for tester and leads). */
export const ISOLATION: readonly string[] = [
  'Find every supply of this system, and say out loud what each one feeds.',
  'Switch them all off.',
  'Lock them off. Keep the key. Put up the notice.',
  'Prove the tester on a known source.',
  'Test line to neutral, line to earth and neutral to earth.',
  'Prove the tester again.',
];

/** The cautions due before a test: none for a look at what is cold and shut. */
export function cautionsFor(system: System, { danger, covers, test, changes }: NextTest): Caution[] {
  const parts = covers.map((id) => partNamed(system, id));
  const boilers = parts.filter(({ kind }) => kind.heat === 'gives');
  const trips = parts.filter(({ kind }) =>
    (kind.inputs ?? []).some(({ settings: [, on] }) => on === 'tripped'),
  );
  const sealed = system.spec.stores?.some(({ unvented }) => unvented) ?? false;
  const says: (Caution | false)[] = [
    danger === 'none' &&
      test.kind === 'warms' && {
        says: 'Use the back of your hand and be quick: pipes and radiators can burn.',
        source: 'common practice',
      },
    danger === 'none' &&
      Object.values(changes).includes('calling') && {
        says: 'Note how the thermostat was set, and put it back when you are done.',
        source: 'common practice',
      },
    danger === 'live' && {
      says: 'Live work is a last resort: only where a dead test cannot tell, only by competent persons, only with your firm’s leave and precautions.',
      source: 'Electricity at Work Regulations 1989, regulations 14 and 16',
    },
    danger === 'live' && {
      says: 'Use a two-pole tester with fused, shrouded probes. Prove it before and after. Take covers off dead, and touch nothing but the probes.',
      source: 'HSE guidance note GS38, 4th edition, 2015',
    },
    boilers.length > 0 && {
      says: 'Only somebody qualified opens a boiler or heat pump, by the maker’s instructions. A gas boiler is for a registered gas engineer.',
      source: 'common practice',
    },
    trips.length > 0 &&
      sealed && {
        says: 'Safety devices of an unvented cylinder are for somebody qualified for unvented hot water. Never bypass one. Find out why it tripped before you reset it.',
        source: 'Approved Document G, 2015 edition with 2016 amendments, 3.18 and 3.39',
      },
  ];
  return says.filter((one) => one !== false);
}

/** When to stop, whoever is at work. */
export const STOP =
  'Stop if you smell gas or burning, if there is water near the wiring, or if a fuse blows again. Switch off where that is safe, and get help.';

/** What the label of an unvented cylinder tells its owner (Approved Document G, 2015 edition with 2016 amendments, 3.24). */
export const DISCHARGE =
  'Hot water running from the cylinder’s discharge pipe: switch the heater off and call the installer.';
