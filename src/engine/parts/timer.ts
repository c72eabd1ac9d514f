import type { PartKind } from '../model/part.ts';

/** A single-channel time switch: one changeover from its own line, the clock and the contact share it (common practice). */
export const timer: PartKind = {
  kind: 'timer',
  title: 'Timer',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the clock and for the output.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral for the clock.' },
    { id: 'ON', core: 'brown', duty: 'switched', does: 'Live while the timer is on.' },
    { id: 'OFF', core: 'black', duty: 'switched', does: 'Live while the timer is off. Few systems use it.' },
  ],
  inputs: [{ slot: 'timed', settings: ['off', 'on'] }],
  contacts: [
    { id: 'on', between: ['L', 'ON'], closed: ({ setting }) => setting.timed === 'on' },
    { id: 'off', between: ['L', 'OFF'], closed: ({ setting }) => setting.timed === 'off' },
  ],
  loads: [{ id: 'clock', between: ['L', 'N'] }],
  // 5 W at 230 V (as a two-channel programmer in a typical current sum, common practice): 230²/5.
  elements: [{ id: 'clock', between: ['L', 'N'], ohms: 10_580 }],
  permanentLine: ['L'],
  failures: [
    { id: 'on welded', says: 'has its output welded on', contacts: { on: 'closed', off: 'open' } },
    { id: 'off welded', says: 'has its output welded off', contacts: { off: 'closed', on: 'open' } },
    { id: 'on open', says: 'never makes its on contact', contacts: { on: 'open' } },
    { id: 'off open', says: 'never makes its off contact', contacts: { off: 'open' } },
  ],
};
