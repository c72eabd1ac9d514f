import type { PartKind } from '../model/part.ts';

/** Pump, valves and gauge of a solar circuit on one plate, with the collector behind it: its pump brings the heat. */
export const solarPumpStation: PartKind = {
  kind: 'solar-pump-station',
  title: 'Solar pump station',
  terminals: [
    { id: 'L', core: 'brown', duty: 'switched', does: 'Live in: the solar pump runs.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the pump.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the pump.' },
  ],
  loads: [{ id: 'motor', between: ['L', 'N'] }],
  // 60 W at 230 V, as for other pumps (common practice): 230²/60.
  elements: [{ id: 'motor', between: ['L', 'N'], ohms: 882 }],
  work: { does: 'pumps', needs: ['motor'] },
  ports: ['flow', 'return'],
  heat: 'gives',
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'dead', says: 'does not run', dead: ['motor'] },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
