import type { PartKind } from '../model/part.ts';

/**
 * Immersion heater with its own thermostat and, after it, its own cut-out that only a hand resets (Approved Document G,
 * 2015 edition with 2016 amendments, 3.33: each source of heat has one). Both are inside the head.
 */
export const immersionHeater: PartKind = {
  kind: 'immersion-heater',
  title: 'Immersion heater',
  terminals: [
    { id: 'L', core: 'brown', duty: 'switched', does: 'Live in, to the thermostat in the head.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the element.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the element’s metal sheath.' },
  ],
  inner: ['after the thermostat', 'element'],
  inputs: [
    { slot: 'call', settings: ['satisfied', 'calling'] },
    { slot: 'trip', settings: ['healthy', 'tripped'] },
  ],
  contacts: [
    {
      id: 'thermostat',
      between: ['L', 'after the thermostat'],
      closed: ({ setting }) => setting.call === 'calling',
    },
    {
      id: 'cut-out',
      between: ['after the thermostat', 'element'],
      closed: ({ setting }) => setting.trip === 'healthy',
    },
  ],
  loads: [{ id: 'element', between: ['element', 'N'] }],
  // 3 kW at 230 V, the usual size (common practice): 230²/3000.
  elements: [{ id: 'element', between: ['element', 'N'], ohms: 17.63 }],
  work: { does: 'heats', needs: ['element'] },
  heat: 'warms',
  faults: [{ id: 'case', between: ['element', 'E'] }],
  failures: [
    {
      id: 'thermostat welded',
      says: 'has its thermostat welded on its call',
      contacts: { thermostat: 'closed' },
    },
    {
      id: 'cut-out failed closed',
      says: 'has a cut-out that fails to trip',
      contacts: { 'cut-out': 'closed' },
    },
    { id: 'element open', says: 'has a burnt out element', dead: ['element'] },
    { id: 'live case', says: 'has an element that leaks to its sheath', contacts: { case: 'closed' } },
  ],
};
