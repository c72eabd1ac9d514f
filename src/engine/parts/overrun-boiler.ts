import type { PartKind } from '../model/part.ts';

/**
 * A boiler with pump overrun: it feeds the pump from a terminal of its own, while it is asked to fire and for some
 * minutes after, so that the heat left in it is carried away (common practice: 3 to 15 minutes, or until the flow has
 * cooled). `running` is the whole time the pump is fed; one step back to `stopped` is the overrun running out.
 */
export const overrunBoiler: PartKind = {
  kind: 'overrun-boiler',
  title: 'Boiler with pump overrun',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the electronics and for the overrun.' },
    { id: 'SL', core: 'brown', duty: 'switched', does: 'Switched line: live asks the boiler to fire.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the boiler.' },
    {
      id: 'PUMP',
      core: 'brown',
      duty: 'switched',
      does: 'Out to the pump: live while the boiler is asked to fire, and a while after.',
    },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the boiler.' },
  ],
  contacts: [
    // Assumption: the relay inside is made for 2 A; makers give from 1 A up.
    { id: 'pump', between: ['L', 'PUMP'], closed: ({ position }) => position === 'running', amps: 2 },
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
  motion: { positions: ['stopped', 'running'], drive: 'demand' },
  work: { does: 'fires', needs: ['electronics', 'demand'] },
  permanentLine: ['L'],
  ports: ['flow', 'return'],
  heat: 'gives',
  minimumFlow: true,
  pumpedWhile: 'running',
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'fires by itself', says: 'fires uncalled while it has its permanent line', needs: ['electronics'] },
    { id: 'does not fire', says: 'does not fire', dead: ['demand'] },
    { id: 'pump relay welded', says: 'never stops feeding the pump', contacts: { pump: 'closed' } },
    { id: 'pump relay open', says: 'never feeds the pump', contacts: { pump: 'open' } },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
