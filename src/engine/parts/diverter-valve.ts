import type { PartKind } from '../model/part.ts';

const positions = ['rest', 'between', 'driven'] as const;
const isDriven = ({ position }: { readonly position: string }) => position === 'driven';

/**
 * Two-position diverter valve: the motor drives it over to the cylinder (port B), the spring takes it back to the
 * radiators (port A). It never stays between the two. Which port is open at rest differs between makes, so read the head
 * (common practice); this one rests open to the radiators. Grey is the common of a changeover end switch: joined to orange
 * once the valve is driven over, to white otherwise.
 */
export const diverterValve: PartKind = {
  kind: 'diverter-valve',
  title: 'Diverter valve',
  terminals: [
    { id: 'brown', core: 'brown', duty: 'switched', does: 'Live in: drives the valve over to the cylinder.' },
    { id: 'grey', core: 'grey', duty: 'switched', does: 'Common of the end switch: out to boiler and pump.' },
    { id: 'orange', core: 'orange', duty: 'switched', does: 'Joined to grey once the valve is driven over.' },
    { id: 'white', core: 'white', duty: 'switched', does: 'Joined to grey until the valve is driven over.' },
    { id: 'blue', core: 'blue', duty: 'neutral', does: 'Neutral of the motor.' },
    { id: 'earth', core: 'green-yellow', duty: 'earth', does: 'Earth of the metal head.' },
  ],
  contacts: [
    // 2.2 A inductive is the least that is published for an end switch; others are made for up to 3 A.
    { id: 'switch driven', between: ['grey', 'orange'], closed: isDriven, amps: 2.2 },
    { id: 'switch at rest', between: ['grey', 'white'], closed: (state) => !isDriven(state), amps: 2.2 },
  ],
  loads: [{ id: 'motor', between: ['brown', 'blue'] }],
  // 6 W at 230 V, taken at unity power factor, as for the mid-position valve.
  elements: [{ id: 'motor', between: ['brown', 'blue'], ohms: 8_817 }],
  motion: { positions, drive: 'motor' },
  ports: ['AB', 'A', 'B'],
  passes: (position) => {
    if (position === 'rest') return [['AB', 'A']];
    if (position === 'driven') return [['AB', 'B']];
    return [
      ['AB', 'A'],
      ['AB', 'B'],
    ];
  },
  faults: [{ id: 'case', between: ['brown', 'earth'] }],
  failures: [
    { id: 'motor dead', says: 'has a dead motor', dead: ['motor'] },
    { id: 'stuck rest', says: 'is stuck at rest', stuck: 'rest' },
    { id: 'stuck between', says: 'is stuck half way', stuck: 'between' },
    { id: 'stuck driven', says: 'is stuck driven over', stuck: 'driven' },
    {
      id: 'passing',
      says: 'lets by at the port that should be shut',
      leaks: [
        ['AB', 'A'],
        ['AB', 'B'],
      ],
    },
    { id: 'spring broken', says: 'has a broken spring', unsprung: true },
    {
      id: 'switch welded driven',
      says: 'has its switch welded on orange',
      contacts: { 'switch driven': 'closed', 'switch at rest': 'open' },
    },
    {
      id: 'switch welded at rest',
      says: 'has its switch welded on white',
      contacts: { 'switch driven': 'open', 'switch at rest': 'closed' },
    },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
