import type { PartKind, PartState } from '../model/part.ts';

/** The heating slide takes the hot water slide with it: heating alone cannot be chosen. */
const waterOn = ({ setting }: PartState) => setting['hot-water'] === 'on' || setting.heating === 'on';
const heatingOn = ({ setting }: PartState) => setting.heating === 'on';

/**
 * A programmer made for gravity hot water: two slides tied together, so that switching heating on switches hot water on
 * as well. It has no terminals that are live while off (common practice).
 */
export const gravityProgrammer: PartKind = {
  kind: 'gravity-programmer',
  title: 'Gravity programmer',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the clock and for both outputs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral for the clock.' },
    { id: 'HW-ON', core: 'brown', duty: 'switched', does: 'Live while hot water or heating is on.' },
    { id: 'CH-ON', core: 'brown', duty: 'switched', does: 'Live while heating is on.' },
  ],
  inputs: [
    { slot: 'hot-water', settings: ['off', 'on'] },
    { slot: 'heating', settings: ['off', 'on'] },
  ],
  contacts: [
    { id: 'hot water', between: ['L', 'HW-ON'], closed: waterOn },
    { id: 'heating', between: ['L', 'CH-ON'], closed: heatingOn },
  ],
  loads: [{ id: 'clock', between: ['L', 'N'] }],
  // 5 W at 230 V (as a two-channel programmer in a typical current sum, common practice): 230²/5.
  elements: [{ id: 'clock', between: ['L', 'N'], ohms: 10_580 }],
  permanentLine: ['L'],
  failures: (['hot water', 'heating'] as const).flatMap((output) => [
    {
      id: `${output} welded`,
      says: `has its ${output} output welded on`,
      contacts: { [output]: 'closed' } as const,
    },
    {
      id: `${output} open`,
      says: `never makes its ${output} output`,
      contacts: { [output]: 'open' } as const,
    },
  ]),
};
