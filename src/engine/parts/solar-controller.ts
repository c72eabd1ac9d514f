import type { PartKind } from '../model/part.ts';

/**
 * Solar controller: compares the collector with the store and runs the solar pump while the sun can warm it and the
 * store is below its limit. Its two sensors share a common on the board (C2 and S1); with either missing it shows a
 * fault and its output stays dead (common practice).
 */
export const solarController: PartKind = {
  kind: 'solar-controller',
  title: 'Solar controller',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line, for the controller and its output.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the controller.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the controller.' },
    { id: 'PUMP', core: 'brown', duty: 'switched', does: 'Live while the sun can warm the store.' },
    { id: 'C1', core: 'white', duty: 'extra-low', does: 'Sensor of the collector.' },
    { id: 'C2', core: 'white', duty: 'extra-low', does: 'Sensor of the collector, the other lead.' },
    { id: 'S1', core: 'white', duty: 'extra-low', does: 'Sensor low in the store.' },
    { id: 'S2', core: 'white', duty: 'extra-low', does: 'Sensor low in the store, the other lead.' },
  ],
  inputs: [
    { slot: 'sun', settings: ['dull', 'shining'] },
    { slot: 'store', settings: ['satisfied', 'calling'] },
  ],
  contacts: [
    { id: 'sensor common', between: ['C2', 'S1'], closed: () => true },
    {
      id: 'output',
      between: ['L', 'PUMP'],
      closed: ({ setting, position }) =>
        setting.sun === 'shining' && setting.store === 'calling' && position === 'reading its sensors',
      amps: 1,
    },
  ],
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'sensors', between: ['C1', 'S2'], ownLoop: true },
  ],
  // Assumption: 3 W at 230 V, as for other small controls.
  elements: [{ id: 'electronics', between: ['L', 'N'], ohms: 17_630 }],
  motion: { positions: ['in fault', 'reading its sensors'], drive: 'sensors' },
  permanentLine: ['L'],
  failures: [
    { id: 'output welded', says: 'has its output welded', contacts: { output: 'closed' } },
    { id: 'output open', says: 'never makes its output', contacts: { output: 'open' } },
  ],
};
