import type { PartKind, PartOptions } from '../model/part.ts';

/**
 * An external circulator; option `watts` is what it draws. 60 W unless the system says otherwise (current sum of a
 * typical set of controls, common practice), taken at unity power factor.
 */
export const pump = ({ watts = 60 }: PartOptions): PartKind => ({
  kind: 'pump',
  title: 'Pump',
  terminals: [
    { id: 'L', core: 'brown', duty: 'switched', does: 'Live in: the pump runs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the pump.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the pump.' },
  ],
  loads: [{ id: 'motor', between: ['L', 'N'] }],
  elements: [{ id: 'motor', between: ['L', 'N'], ohms: Number((230 ** 2 / Number(watts)).toPrecision(3)) }],
  work: { does: 'pumps', needs: ['motor'] },
  ports: ['in', 'out'],
  passes: () => [['in', 'out']],
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'dead', says: 'does not run', dead: ['motor'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
});
