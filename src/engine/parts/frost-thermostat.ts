import type { PartKind } from '../model/part.ts';

/**
 * Frost thermostat: feels the air of a cold place, such as a garage, and makes near +5 °C (common practice). It is wired
 * across the usual controls, so it can call when all of them are off.
 */
export const frostThermostat: PartKind = {
  kind: 'frost-thermostat',
  title: 'Frost thermostat',
  terminals: [
    { id: 'COM', core: 'brown', duty: 'switched', does: 'Common: the feed to the contact.' },
    {
      id: 'CALL',
      core: 'brown',
      duty: 'switched',
      does: 'Joined to COM while the air is close to freezing.',
    },
  ],
  inputs: [{ slot: 'frost', settings: ['mild', 'freezing'] }],
  contacts: [
    { id: 'frost', between: ['COM', 'CALL'], closed: ({ setting }) => setting.frost === 'freezing' },
  ],
  failures: [
    { id: 'welded', says: 'is welded on its call', contacts: { frost: 'closed' } },
    { id: 'open', says: 'never makes', contacts: { frost: 'open' } },
  ],
};
