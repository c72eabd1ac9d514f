import type { PartKind } from '../model/part.ts';

const closed = ({ position }: { readonly position: string }) => position === 'closed';

/**
 * Contactor: a small control current in the coil closes two contacts that carry a big one. The coil and the contacts
 * share no terminal, so each can be on a circuit of its own. 20 A is a usual rating (common practice).
 */
export const contactor: PartKind = {
  kind: 'contactor',
  title: 'Contactor',
  terminals: [
    { id: 'A1', core: 'brown', duty: 'switched', does: 'Live in: pulls the contactor in.' },
    { id: 'A2', core: 'blue', duty: 'neutral', does: 'Neutral of the coil.' },
    { id: '1', core: 'brown', duty: 'switched', does: 'First contact, from the supply of the load.' },
    { id: '2', core: 'brown', duty: 'switched', does: 'First contact, out to the load.' },
    { id: '3', core: 'brown', duty: 'switched', does: 'Second contact in, often left spare.' },
    { id: '4', core: 'brown', duty: 'switched', does: 'Second contact out, often left spare.' },
  ],
  contacts: [
    { id: 'contact 1-2', between: ['1', '2'], closed, amps: 20 },
    { id: 'contact 3-4', between: ['3', '4'], closed, amps: 20 },
  ],
  loads: [{ id: 'coil', between: ['A1', 'A2'] }],
  // Assumption: the coil holds at about 3 W at 230 V.
  elements: [{ id: 'coil', between: ['A1', 'A2'], ohms: 17_630 }],
  motion: { positions: ['open', 'closed'], drive: 'coil' },
  failures: [
    { id: 'coil dead', says: 'has a dead coil', dead: ['coil'] },
    { id: 'stuck closed', says: 'is welded closed', stuck: 'closed' },
    { id: 'stuck open', says: 'does not pull in', stuck: 'open' },
    { id: 'contact 1-2 open', says: 'has its first contact burnt out', contacts: { 'contact 1-2': 'open' } },
  ],
};
