import type { PartKind } from '../model/part.ts';

/** A loop of pipe in the floor, one of several on a manifold. */
export const floorLoop: PartKind = {
  kind: 'floor-loop',
  title: 'Floor loop',
  terminals: [],
  ports: ['in', 'out'],
  heat: 'takes',
};
