import type { PartKind } from '../model/part.ts';

/**
 * One-channel receiver of a wireless room thermostat: supplied with line and neutral, it switches a volt-free changeover
 * as the thermostat in the room tells it by radio. Nothing inside joins its line to COM (common practice).
 */
export const wirelessReceiver: PartKind = {
  kind: 'wireless-receiver',
  title: 'Wireless receiver',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the receiver itself.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the receiver.' },
    {
      id: 'COM',
      core: 'brown',
      duty: 'switched',
      does: 'Common: the feed to the contact. Nothing inside joins it to L.',
    },
    { id: 'ON', core: 'brown', duty: 'switched', does: 'Joined to COM while the thermostat calls for heat.' },
    { id: 'OFF', core: 'black', duty: 'switched', does: 'Joined to COM while it does not call.' },
  ],
  inputs: [{ slot: 'call', settings: ['satisfied', 'calling'] }],
  contacts: [
    { id: 'on', between: ['COM', 'ON'], closed: ({ setting }) => setting.call === 'calling' },
    { id: 'off', between: ['COM', 'OFF'], closed: ({ setting }) => setting.call === 'satisfied' },
  ],
  loads: [{ id: 'electronics', between: ['L', 'N'] }],
  // Assumption: 2 W at 230 V, as nothing is published: 230²/2.
  elements: [{ id: 'electronics', between: ['L', 'N'], ohms: 26_450 }],
  permanentLine: ['L'],
  failures: [
    { id: 'on welded', says: 'is welded on its call', contacts: { on: 'closed', off: 'open' } },
    { id: 'no signal', says: 'has lost its signal and stays off', contacts: { on: 'open', off: 'closed' } },
    { id: 'on open', says: 'never makes its on contact', contacts: { on: 'open' } },
    { id: 'off open', says: 'never makes its off contact', contacts: { off: 'open' } },
  ],
};
