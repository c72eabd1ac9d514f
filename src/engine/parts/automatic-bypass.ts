import type { PartKind } from '../model/part.ts';

/**
 * An automatic bypass between flow and return. It opens by the pressure of the pump when all else has shut, so for the
 * engine it is always a way for the water, and never a way for heat to anything that takes it.
 */
export const automaticBypass: PartKind = {
  kind: 'automatic-bypass',
  title: 'Automatic bypass',
  terminals: [],
  ports: ['in', 'out'],
  heat: 'bypass',
};
