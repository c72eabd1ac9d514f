import type { PartKind } from '../model/part.ts';

/** An external circulator. */
export const pump: PartKind = {
  kind: 'pump',
  title: 'Pump',
  terminals: [
    { id: 'L', core: 'brown', duty: 'switched', does: 'Live in: the pump runs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the pump.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the pump.' },
  ],
  loads: [{ id: 'motor', between: ['L', 'N'] }],
  // 60 W at 230 V (current sum of a typical set of controls, common practice): 230²/60.
  elements: [{ id: 'motor', between: ['L', 'N'], ohms: 882 }],
  work: { does: 'pumps', needs: ['motor'] },
  ports: ['in', 'out'],
  passes: () => [['in', 'out']],
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'dead', says: 'does not run', dead: ['motor'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
