import { changeoverContacts, changeoverFailures } from '../model/changeover.ts';
import type { PartKind, TerminalSpec } from '../model/part.ts';

const terminals = (what: string): readonly TerminalSpec[] => [
  { id: 'COM', core: 'brown', duty: 'switched', does: 'Common: the feed to the contact.' },
  { id: 'CALL', core: 'brown', duty: 'switched', does: `Joined to COM while the ${what} calls for heat.` },
  { id: 'SAT', core: 'black', duty: 'switched', does: `Joined to COM while the ${what} is warm enough.` },
];

/** Cylinder thermostat: a single-pole changeover (common practice). */
export const cylinderThermostat: PartKind = {
  kind: 'cylinder-thermostat',
  title: 'Cylinder thermostat',
  terminals: terminals('cylinder'),
  inputs: [{ slot: 'call', settings: ['satisfied', 'calling'] }],
  contacts: changeoverContacts,
  failures: changeoverFailures,
};

/**
 * Room thermostat with a small accelerator heater between the call and its neutral: it warms the bellows a
 * little while calling, so the swing stays under 1 K. Without it the thermostat still works, less closely.
 */
export const roomThermostat: PartKind = {
  kind: 'room-thermostat',
  title: 'Room thermostat',
  terminals: [
    ...terminals('room'),
    {
      id: 'N',
      core: 'blue',
      duty: 'neutral',
      does: 'Neutral for the small heater that steadies the thermostat.',
    },
  ],
  inputs: [{ slot: 'call', settings: ['satisfied', 'calling'] }],
  contacts: changeoverContacts,
  failures: changeoverFailures,
  loads: [{ id: 'accelerator', between: ['CALL', 'N'], optional: true }],
  // Assumption: 0.2 W at 230 V, as no value is published.
  elements: [{ id: 'accelerator', between: ['CALL', 'N'], ohms: 264_500 }],
};
