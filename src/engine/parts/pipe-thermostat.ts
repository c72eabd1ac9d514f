import type { PartKind } from '../model/part.ts';

/**
 * Pipe thermostat of a frost protection: strapped to the return, it opens once the water is warm, near 25 °C (common
 * practice). In series with the frost thermostat it keeps the boiler from running all night in a cold garage.
 */
export const pipeThermostat: PartKind = {
  kind: 'pipe-thermostat',
  title: 'Pipe thermostat',
  terminals: [
    { id: 'COM', core: 'brown', duty: 'switched', does: 'Common: the feed to the contact.' },
    { id: 'CALL', core: 'brown', duty: 'switched', does: 'Joined to COM while the pipe is cold.' },
  ],
  inputs: [{ slot: 'pipe', settings: ['warm', 'cold'] }],
  contacts: [{ id: 'pipe', between: ['COM', 'CALL'], closed: ({ setting }) => setting.pipe === 'cold' }],
  failures: [
    { id: 'welded', says: 'is welded on its call', contacts: { pipe: 'closed' } },
    { id: 'open', says: 'never makes', contacts: { pipe: 'open' } },
  ],
};
