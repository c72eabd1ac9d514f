import type { PartKind } from '../model/part.ts';

/**
 * High-limit thermostat on the flow to a floor: opens when the water is too hot and closes again by itself, so it is a
 * limit of use and no cut-out. A usual setting is 65 °C at the sensor (controller instructions).
 */
export const highLimitThermostat: PartKind = {
  kind: 'high-limit-thermostat',
  title: 'High-limit thermostat',
  terminals: [
    { id: 'IN', core: 'brown', duty: 'switched', does: 'Feed to the limit.' },
    {
      id: 'OUT',
      core: 'brown',
      duty: 'switched',
      does: 'Joined to IN while the water to the floor is cool enough.',
    },
  ],
  inputs: [{ slot: 'limit', settings: ['cool', 'too hot'] }],
  contacts: [{ id: 'limit', between: ['IN', 'OUT'], closed: ({ setting }) => setting.limit === 'cool' }],
  failures: [
    { id: 'failed closed', says: 'never opens', contacts: { limit: 'closed' } },
    { id: 'failed open', says: 'is open though the water is cool', contacts: { limit: 'open' } },
  ],
};
