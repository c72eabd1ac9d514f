import type { PartKind } from '../model/part.ts';

/**
 * A relay (a contactor is a big one): mains on the coil pulls the contact in, a spring lets it go. It takes a load that
 * is too big for a valve's end switch.
 */
export const relay: PartKind = {
  kind: 'relay',
  title: 'Relay',
  terminals: [
    { id: 'A1', core: 'brown', duty: 'switched', does: 'Live in: pulls the relay in.' },
    { id: 'A2', core: 'blue', duty: 'neutral', does: 'Neutral of the coil.' },
    { id: '11', core: 'brown', duty: 'switched', does: 'Feed to the contact: permanent line.' },
    { id: '14', core: 'brown', duty: 'switched', does: 'Joined to 11 while the relay is pulled in.' },
  ],
  contacts: [
    {
      id: 'contact',
      between: ['11', '14'],
      closed: ({ position }) => position === 'pulled in',
      // Assumption: 6 A for a motor load; makers rate relays of this size from about 5 A inductive.
      amps: 6,
    },
  ],
  loads: [{ id: 'coil', between: ['A1', 'A2'] }],
  // Assumption: a coil of 2 W at 230 V, taken at unity power factor: 230²/2.
  elements: [{ id: 'coil', between: ['A1', 'A2'], ohms: 26_450 }],
  motion: { positions: ['let go', 'pulled in'], drive: 'coil' },
  failures: [
    { id: 'coil dead', says: 'has a dead coil', dead: ['coil'] },
    { id: 'contact welded', says: 'has its contact welded', contacts: { contact: 'closed' } },
    { id: 'contact open', says: 'never makes its contact', contacts: { contact: 'open' } },
  ],
};
