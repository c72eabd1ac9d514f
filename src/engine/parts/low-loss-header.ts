import type { PartKind } from '../model/part.ts';

/**
 * A low-loss header: a short wide pipe between flow and return. Boilers move water through it at their own rate and the
 * zones draw from it at theirs, so neither starves the other. It is always open and has no wires.
 */
export const lowLossHeader: PartKind = {
  kind: 'low-loss-header',
  title: 'Low-loss header',
  terminals: [],
  ports: ['in', 'out'],
  heat: 'bypass',
};
