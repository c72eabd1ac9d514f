import { doublePole } from '../model/double-pole.ts';
import type { PartKind } from '../model/part.ts';

/**
 * The load side of a double-pole isolator on a circuit of its own, as an immersion heater has it, with a 16 A device at
 * the board (common practice). It stands beside the supply of the controls: proving one dead says nothing of the other.
 */
export const isolator: PartKind = {
  kind: 'isolator',
  title: 'Isolator',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Line of this circuit alone.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of this circuit alone.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of this circuit.' },
  ],
  ...doublePole(16),
  failures: [
    { id: 'fuse blown', says: 'has lost its line', contacts: { 'line pole': 'open' } },
    { id: 'neutral lost', says: 'has lost its neutral', contacts: { 'neutral pole': 'open' } },
  ],
};
