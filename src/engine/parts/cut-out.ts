import type { PartKind } from '../model/part.ts';

/**
 * Non-self-resetting energy cut-out of a cylinder: opens on overheating and stays open until reset by hand
 * (Approved Document G, 2015 edition with 2016 amendments, key terms and 3.28).
 */
export const energyCutOut: PartKind = {
  kind: 'energy-cut-out',
  title: 'Energy cut-out',
  terminals: [
    { id: 'IN', core: 'brown', duty: 'switched', does: 'Feed to the cut-out.' },
    { id: 'OUT', core: 'brown', duty: 'switched', does: 'Joined to IN until the cut-out trips.' },
  ],
  inputs: [{ slot: 'trip', settings: ['healthy', 'tripped'] }],
  contacts: [{ id: 'cut-out', between: ['IN', 'OUT'], closed: ({ setting }) => setting.trip === 'healthy' }],
  failures: [
    { id: 'failed closed', says: 'fails to trip', contacts: { 'cut-out': 'closed' } },
    { id: 'failed open', says: 'is open though nothing is hot', contacts: { 'cut-out': 'open' } },
  ],
};
