import type { PartKind } from '../model/part.ts';

/** A boiler with a permanent line for its electronics and a switched line that asks it to fire. */
export const boiler: PartKind = {
  kind: 'boiler',
  title: 'Boiler',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the electronics.' },
    { id: 'SL', core: 'brown', duty: 'switched', does: 'Switched line: live asks the boiler to fire.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the boiler.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the boiler.' },
  ],
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'demand', between: ['SL', 'N'] },
  ],
  elements: [
    // 140 W at 230 V (typical heat-only boiler, common practice): 230²/140.
    { id: 'electronics', between: ['L', 'N'], ohms: 378 },
    // Assumption: the demand input draws about 0.5 W; no value is published.
    { id: 'demand', between: ['SL', 'N'], ohms: 105_800 },
  ],
  work: { does: 'fires', needs: ['electronics', 'demand'] },
  permanentLine: ['L'],
  ports: ['flow', 'return'],
  heat: 'gives',
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'fires by itself', says: 'fires uncalled while it has its permanent line', needs: ['electronics'] },
    { id: 'does not fire', says: 'does not fire', dead: ['demand'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
