import type { PartKind } from './part.ts';

/**
 * What every double-pole supply has inside: a contact in line and one in neutral, switched together by the slot
 * `supply`; earth is never switched. `fuse`: amps of the device that protects it.
 */
export const doublePole = (
  fuse: number,
): Required<Pick<PartKind, 'inner' | 'inputs' | 'contacts' | 'supply'>> => ({
  inner: ['line', 'neutral'],
  inputs: [{ slot: 'supply', settings: ['off', 'on'] }],
  contacts: [
    { id: 'line pole', between: ['line', 'L'], closed: ({ setting }) => setting.supply === 'on' },
    { id: 'neutral pole', between: ['neutral', 'N'], closed: ({ setting }) => setting.supply === 'on' },
  ],
  supply: {
    line: 'line',
    neutral: 'neutral',
    earth: 'E',
    out: { line: 'L', neutral: 'N', earth: 'E' },
    fuse,
  },
});
