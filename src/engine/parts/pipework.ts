import type { PartKind } from '../model/part.ts';

const taker = (kind: string, title: string): PartKind => ({
  kind,
  title,
  terminals: [],
  ports: ['in', 'out'],
  heat: 'takes',
});

/** The coil inside an indirect cylinder. */
export const cylinderCoil = taker('cylinder-coil', 'Cylinder coil');
/** A circuit of radiators. */
export const radiators = taker('radiators', 'Radiators');
