import type { PartKind } from '../model/part.ts';

/** Making hot water: it is switched on and the tank sensor reads too cold. */
const onWater = ({ setting }: { readonly setting: Readonly<Record<string, string>> }) =>
  setting['hot-water'] === 'on' && setting.tank === 'calling';

/**
 * The indoor controls of a heat pump, with its own circulator. It decides about hot water by itself, from its clock and
 * its tank sensor; heating is asked for by a volt-free pair. The outdoor unit has a supply of its own, not drawn here.
 * Without its tank sensor it shows a fault and does nothing (common practice).
 */
export const heatPump: PartKind = {
  kind: 'heat-pump',
  title: 'Heat pump',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line of the controls.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the controls.' },
    { id: 'E', core: 'green-yellow', duty: 'earth', does: 'Earth of the controls.' },
    { id: 'DV', core: 'brown', duty: 'switched', does: 'Live while hot water is made: the diverter valve.' },
    {
      id: 'IM',
      core: 'brown',
      duty: 'switched',
      does: 'Live while it pasteurises: a contactor coil, no more.',
    },
    {
      id: 'HT1',
      core: 'white',
      duty: 'extra-low',
      does: 'Heating call, volt-free: joined to HT2 asks for heat.',
    },
    { id: 'HT2', core: 'white', duty: 'extra-low', does: 'Heating call, the other side of the pair.' },
    { id: 'T1', core: 'white', duty: 'extra-low', does: 'Tank sensor.' },
    { id: 'T2', core: 'white', duty: 'extra-low', does: 'Tank sensor, the other lead.' },
  ],
  inner: ['water'],
  inputs: [
    { slot: 'hot-water', settings: ['off', 'on'] },
    { slot: 'tank', settings: ['satisfied', 'calling'] },
    { slot: 'pasteurise', settings: ['off', 'on'] },
  ],
  contacts: [
    { id: 'hot water', between: ['L', 'water'], closed: onWater },
    { id: 'diverter output', between: ['L', 'DV'], closed: onWater, amps: 1 },
    {
      id: 'immersion output',
      between: ['L', 'IM'],
      closed: ({ setting }) => setting.pasteurise === 'on',
      amps: 1,
    },
  ],
  loads: [
    { id: 'electronics', between: ['L', 'N'] },
    { id: 'heating', between: ['HT1', 'HT2'], ownLoop: true },
    { id: 'water', between: ['water', 'N'] },
    { id: 'tank sensor', between: ['T1', 'T2'], ownLoop: true },
  ],
  elements: [
    // Assumption: indoor controls and circulator together 100 W at 230 V.
    { id: 'electronics', between: ['L', 'N'], ohms: 529 },
    // Assumption: the request for hot water is a signal of about 0.5 W on the board.
    { id: 'water', between: ['water', 'N'], ohms: 105_800 },
  ],
  work: { does: 'fires', needs: ['electronics', 'tank sensor', ['heating', 'water']] },
  permanentLine: ['L'],
  ports: ['flow', 'return'],
  heat: 'gives',
  faults: [{ id: 'case', between: ['L', 'E'] }],
  failures: [
    { id: 'runs by itself', says: 'runs uncalled while it has its permanent line', needs: ['electronics'] },
    { id: 'does not run', says: 'does not run', dead: ['heating', 'water'] },
    {
      id: 'diverter output open',
      says: 'never makes its diverter output',
      contacts: { 'diverter output': 'open' },
    },
    {
      id: 'immersion output welded',
      says: 'has its immersion output welded',
      contacts: { 'immersion output': 'closed' },
    },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
