import type { PartKind } from '../model/part.ts';

/**
 * An old boiler with a standing pilot and no electronics: line on its one live terminal opens the gas valve, through
 * the boiler's own thermostat. It has no permanent line and no pump overrun (common practice).
 */
export const simpleBoiler: PartKind = {
  kind: 'simple-boiler',
  title: 'Boiler without electronics',
  terminals: [
    { id: 'SL', core: 'brown', duty: 'switched', does: 'Switched line: live asks the boiler to fire.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the boiler.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the boiler.' },
  ],
  loads: [{ id: 'demand', between: ['SL', 'N'] }],
  // Assumption: a gas valve of 20 W at 230 V, taken at unity power factor: 230²/20.
  elements: [{ id: 'demand', between: ['SL', 'N'], ohms: 2_645 }],
  work: { does: 'fires', needs: ['demand'] },
  ports: ['flow', 'return'],
  heat: 'gives',
  faults: [{ id: 'case', between: ['SL', 'E'] }],
  failures: [
    { id: 'does not fire', says: 'does not fire', dead: ['demand'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
