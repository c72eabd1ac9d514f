import { doublePole } from '../model/double-pole.ts';
import type { PartKind, PartOptions } from '../model/part.ts';

/**
 * The load side of a fused, double-pole connection unit: the one supply of the controls. Option `fuse`: its amps, 3
 * unless the system says otherwise. Off opens line and neutral; earth is never switched.
 */
export const fusedSpurOf = ({ fuse = 3 }: PartOptions): PartKind => ({
  kind: 'fused-spur',
  title: 'Fused spur',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: `Permanent line, through the ${fuse} A fuse.` },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the supply.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the supply.' },
  ],
  ...doublePole(Number(fuse)),
  failures: [
    { id: 'fuse blown', says: 'has a blown fuse', contacts: { 'line pole': 'open' } },
    { id: 'neutral lost', says: 'has lost its neutral', contacts: { 'neutral pole': 'open' } },
  ],
});

/** The usual one, with its 3 A fuse. */
export const fusedSpur = fusedSpurOf({});
