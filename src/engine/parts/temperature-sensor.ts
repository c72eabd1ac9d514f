import type { PartKind } from '../model/part.ts';

/**
 * Temperature sensor: a resistance that changes with heat, read by a controller at extra-low voltage. For the circuit it
 * only matters that the pair goes round through it.
 */
export const temperatureSensor: PartKind = {
  kind: 'temperature-sensor',
  title: 'Temperature sensor',
  terminals: [
    { id: 'S1', core: 'white', duty: 'extra-low', does: 'One lead of the sensor. Either way round will do.' },
    { id: 'S2', core: 'white', duty: 'extra-low', does: 'The other lead of the sensor.' },
  ],
  contacts: [{ id: 'element', between: ['S1', 'S2'], closed: () => true }],
  failures: [{ id: 'open', says: 'has a broken lead', contacts: { element: 'open' } }],
};
