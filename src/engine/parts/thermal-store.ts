import type { PartKind } from '../model/part.ts';

/**
 * A thermal store, seen from the heating: a vessel of hot heating water that is drawn from whether or not the boiler
 * fires. For the engine it is always hot. What charges it is a coil or a loop of its own, drawn apart.
 */
export const thermalStore: PartKind = {
  kind: 'thermal-store',
  title: 'Thermal store',
  terminals: [],
  ports: ['flow', 'return'],
  heat: 'gives',
};
