import type { ContactSpec, PartKind } from '../model/part.ts';

const output = (channel: string, terminal: string, setting: string): ContactSpec => ({
  id: `${channel} ${setting}`,
  between: ['L', terminal],
  closed: (state) => state.setting[channel] === setting,
});

/** A two-channel programmer: each output is a changeover from its own line. */
export const twoChannelProgrammer: PartKind = {
  kind: 'two-channel-programmer',
  title: 'Programmer',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the clock and for both outputs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral for the clock.' },
    { id: 'HW-ON', core: 'brown', duty: 'switched', does: 'Live while hot water is on.' },
    { id: 'HW-OFF', core: 'black', duty: 'switched', does: 'Live while hot water is off.' },
    { id: 'CH-ON', core: 'brown', duty: 'switched', does: 'Live while heating is on.' },
    { id: 'CH-OFF', core: 'black', duty: 'switched', does: 'Live while heating is off. Few systems use it.' },
  ],
  inputs: [
    { slot: 'hot-water', settings: ['off', 'on'] },
    { slot: 'heating', settings: ['off', 'on'] },
  ],
  contacts: [
    output('hot-water', 'HW-ON', 'on'),
    output('hot-water', 'HW-OFF', 'off'),
    output('heating', 'CH-ON', 'on'),
    output('heating', 'CH-OFF', 'off'),
  ],
  loads: [{ id: 'clock', between: ['L', 'N'] }],
  // 5 W at 230 V (current sum of a typical set of controls, common practice): 230²/5.
  elements: [{ id: 'clock', between: ['L', 'N'], ohms: 10_580 }],
  failures: ['hot-water', 'heating'].flatMap((channel) =>
    (
      [
        ['on', 'off'],
        ['off', 'on'],
      ] as const
    ).flatMap(([stays, other]) => [
      {
        id: `${channel} ${stays} welded`,
        says: `has its ${channel} output welded ${stays}`,
        contacts: { [`${channel} ${stays}`]: 'closed', [`${channel} ${other}`]: 'open' } as const,
      },
      {
        id: `${channel} ${stays} open`,
        says: `never makes its ${channel} ${stays} contact`,
        contacts: { [`${channel} ${stays}`]: 'open' } as const,
      },
    ]),
  ),
  permanentLine: ['L'],
};
