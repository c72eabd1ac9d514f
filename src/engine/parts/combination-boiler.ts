import type { PartKind } from '../model/part.ts';

/**
 * A boiler with its pump inside: pump, bypass and overrun are wired by the maker. Outside there is only the supply and a
 * switched line that asks for heat. A combination boiler’s hot water at the tap is its own business and needs no call.
 */
export const combinationBoiler: PartKind = {
  kind: 'combination-boiler',
  title: 'Combination or system boiler',
  terminals: [
    {
      id: 'L',
      core: 'brown',
      duty: 'line',
      does: 'Permanent line: for the electronics, the pump inside and, in a combination boiler, the taps.',
    },
    {
      id: 'SL',
      core: 'brown',
      duty: 'switched',
      does: 'Switched line: live asks the boiler to fire.',
    },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the boiler.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the boiler.' },
  ],
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'demand', between: ['SL', 'N'] },
  ],
  elements: [
    // Assumption: electronics, fan and pump together 150 W at 230 V: 230²/150.
    { id: 'electronics', between: ['L', 'N'], ohms: 353 },
    // Assumption: the demand input draws about 0.5 W; no value is published.
    { id: 'demand', between: ['SL', 'N'], ohms: 105_800 },
  ],
  work: { does: 'fires', needs: ['electronics', 'demand'] },
  permanentLine: ['L'],
  ports: ['flow', 'return'],
  heat: 'gives',
  minimumFlow: true,
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'fires by itself', says: 'heats uncalled while it has its permanent line', needs: ['electronics'] },
    { id: 'does not fire', says: 'does not heat', dead: ['demand'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
