import { changeoverContacts, changeoverFailures } from '../model/changeover.ts';
import type { PartKind } from '../model/part.ts';

/**
 * Programmable room thermostat on a battery: clock and thermostat in one, with a volt-free changeover. Its times and its
 * temperature together make one input. A flat battery leaves its latching relay as it stood (common practice), which is
 * the same as a contact welded on that side.
 */
export const programmableThermostat: PartKind = {
  kind: 'programmable-thermostat',
  title: 'Programmable room thermostat',
  terminals: [
    {
      id: 'COM',
      core: 'brown',
      duty: 'switched',
      does: 'Common: the feed to the contact. Nothing inside feeds it.',
    },
    { id: 'CALL', core: 'brown', duty: 'switched', does: 'Joined to COM while the zone calls for heat.' },
    {
      id: 'SAT',
      core: 'black',
      duty: 'switched',
      does: 'Joined to COM while the zone does not call. Most systems leave it empty.',
    },
  ],
  inputs: [{ slot: 'call', settings: ['satisfied', 'calling'] }],
  contacts: changeoverContacts,
  failures: changeoverFailures,
};
