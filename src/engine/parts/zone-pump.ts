import type { PartKind } from '../model/part.ts';
import { pump } from './pump.ts';

const usual = pump({});

/**
 * A pump with a non-return valve: water passes while it runs and is shut off while it stands, so the pump itself is what
 * gives a zone its heat or keeps it cold. The flap does not hold back water driven the right way by another pump, and it
 * is no safety device: a cut-out needs a valve that shuts (Approved Document G, 2015 edition with 2016 amendments, 3.30).
 */
export const zonePump: PartKind = {
  ...usual,
  kind: 'zone-pump',
  title: 'Zone pump',
  motion: { positions: ['stopped', 'running'], drive: 'motor' },
  passes: (position) => (position === 'running' ? [['in', 'out']] : []),
  failures: [
    ...usual.failures!,
    { id: 'flap open', says: 'has a non-return valve that no longer shuts', leaks: [['in', 'out']] },
  ],
};
