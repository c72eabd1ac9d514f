import type { PartKind } from '../model/part.ts';

/**
 * A combination or system boiler that is asked by a volt-free pair: a contact that joins RT1 to RT2 asks for heating, on
 * the boiler's own few volts. A second pair reads an outdoor sensor for weather compensation.
 *
 * Assumption: set up for weather compensation, it looks for the sensor when it is switched on and does not heat before it
 * has found one. Once found it is not missed until the supply has been off. Makers differ here.
 */
export const voltFreeBoiler: PartKind = {
  kind: 'volt-free-boiler',
  title: 'Boiler with volt-free terminals',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line of the boiler.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the boiler.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the boiler.' },
    {
      id: 'RT1',
      core: 'white',
      duty: 'extra-low',
      does: 'Heating call, volt-free: joined to RT2 asks for heat.',
    },
    { id: 'RT2', core: 'white', duty: 'extra-low', does: 'Heating call, the other side of the pair.' },
    { id: 'OS1', core: 'white', duty: 'extra-low', does: 'Outdoor sensor. Either way round will do.' },
    { id: 'OS2', core: 'white', duty: 'extra-low', does: 'Outdoor sensor, the other lead.' },
  ],
  inner: ['ready'],
  contacts: [
    { id: 'ready', between: ['RT2', 'ready'], closed: ({ position }) => position === 'sensor found' },
  ],
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'outdoor sensor', between: ['OS1', 'OS2'], ownLoop: true },
    { id: 'demand', between: ['RT1', 'ready'], ownLoop: true },
  ],
  // Assumption: electronics, fan and pump together 150 W at 230 V: 230²/150. The pairs draw nothing from the mains.
  elements: [{ id: 'electronics', between: ['L', 'N'], ohms: 353 }],
  motion: {
    positions: ['looking for its sensor', 'sensor found'],
    drive: 'outdoor sensor',
    hold: 'electronics',
  },
  work: { does: 'fires', needs: ['electronics', 'demand'] },
  permanentLine: ['L'],
  ports: ['flow', 'return'],
  heat: 'gives',
  minimumFlow: true,
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'fires by itself', says: 'heats uncalled while it has its permanent line', needs: ['electronics'] },
    { id: 'does not fire', says: 'does not heat', dead: ['demand'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
