import type { PartKind } from '../model/part.ts';

const positions = ['shut', 'open'] as const;

/**
 * Normally closed actuator of a floor loop: a small heater melts wax that lifts the pin, which takes some minutes. Cold,
 * a spring shuts the loop again (common practice). It is double insulated and has no earth.
 */
export const actuator: PartKind = {
  kind: 'actuator',
  title: 'Actuator',
  terminals: [
    { id: 'brown', core: 'brown', duty: 'switched', does: 'Live in: opens the loop within some minutes.' },
    { id: 'blue', core: 'blue', duty: 'neutral', does: 'Neutral of the heater.' },
  ],
  loads: [{ id: 'heater', between: ['brown', 'blue'] }],
  // Assumption: 2 W at 230 V once warm; makers' figures run from 1 to 3 W (from memory).
  elements: [{ id: 'heater', between: ['brown', 'blue'], ohms: 26_450 }],
  motion: { positions, drive: 'heater' },
  ports: ['in', 'out'],
  passes: (position) => (position === 'open' ? [['in', 'out']] : []),
  failures: [
    { id: 'heater dead', says: 'has a dead heater', dead: ['heater'] },
    ...positions.map((position) => ({
      id: `stuck ${position}`,
      says: `is stuck ${position}`,
      stuck: position,
    })),
    { id: 'passing', says: 'lets by while shut', leaks: [['in', 'out']] },
  ],
};
