import type { PartKind } from '../model/part.ts';

/**
 * A pump with a non-return valve: water passes while it runs and is shut off while it stands, so the pump itself is what
 * gives a zone its heat or keeps it cold. The flap does not hold back water driven the right way by another pump, and it
 * is no safety device: a cut-out needs a valve that shuts (Approved Document G, 2015 edition with 2016 amendments, 3.30).
 */
export const zonePump: PartKind = {
  kind: 'zone-pump',
  title: 'Zone pump',
  terminals: [
    { id: 'L', core: 'brown', duty: 'switched', does: 'Live in: the pump runs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the pump.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the pump.' },
  ],
  loads: [{ id: 'motor', between: ['L', 'N'] }],
  // 60 W at 230 V (current sum of a typical set of controls, common practice): 230²/60.
  elements: [{ id: 'motor', between: ['L', 'N'], ohms: 882 }],
  work: { does: 'pumps', needs: ['motor'] },
  ports: ['in', 'out'],
  motion: { positions: ['stopped', 'running'], drive: 'motor' },
  passes: (position) => (position === 'running' ? [['in', 'out']] : []),
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'dead', says: 'does not run', dead: ['motor'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
    { id: 'flap open', says: 'has a non-return valve that no longer shuts', leaks: [['in', 'out']] },
  ],
};
