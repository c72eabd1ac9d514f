import { motorFailures } from '../model/motor-failures.ts';
import type { PartKind } from '../model/part.ts';

const positions = ['shut', 'part open', 'open'] as const;
const isOpen = ({ position }: { readonly position: string }) => position === 'open';

/**
 * Spring-return two-port valve with a changeover end switch, made for the gravity leg of a cylinder. Grey is the common
 * of the switch: it is joined to white until the valve is fully open, and to orange from then on (common practice).
 */
export const changeoverTwoPort: PartKind = {
  kind: 'changeover-two-port',
  title: 'Two-port valve with changeover switch',
  terminals: [
    { id: 'brown', core: 'brown', duty: 'switched', does: 'Live in: opens the valve.' },
    { id: 'grey', core: 'grey', duty: 'switched', does: 'Common of the end switch: out to the boiler.' },
    { id: 'orange', core: 'orange', duty: 'switched', does: 'Joined to grey once the valve is open.' },
    { id: 'white', core: 'white', duty: 'switched', does: 'Joined to grey until the valve is open.' },
    { id: 'blue', core: 'blue', duty: 'neutral', does: 'Neutral of the motor.' },
    { id: 'earth', core: 'green-yellow', duty: 'earth', does: 'Earth of the metal head.' },
  ],
  contacts: [
    // 2.2 A inductive is the least that is published for an end switch; others are made for up to 3 A.
    { id: 'switch open', between: ['grey', 'orange'], closed: isOpen, amps: 2.2 },
    { id: 'switch shut', between: ['grey', 'white'], closed: (state) => !isOpen(state), amps: 2.2 },
  ],
  loads: [{ id: 'motor', between: ['brown', 'blue'] }],
  // 6 W at 230 V, taken at unity power factor, as for the two-port valve.
  elements: [{ id: 'motor', between: ['brown', 'blue'], ohms: 8_817 }],
  motion: { positions, drive: 'motor' },
  ports: ['in', 'out'],
  passes: (position) => (position === 'shut' ? [] : [['in', 'out']]),
  faults: [{ id: 'case', between: ['brown', 'earth'] }],
  failures: [
    ...motorFailures(positions),
    { id: 'passing', says: 'lets by while shut', leaks: [['in', 'out']] },
    { id: 'spring broken', says: 'has a broken spring', unsprung: true },
    {
      id: 'switch welded open',
      says: 'has its switch welded on orange',
      contacts: { 'switch open': 'closed', 'switch shut': 'open' },
    },
    {
      id: 'switch welded shut',
      says: 'has its switch welded on white',
      contacts: { 'switch open': 'open', 'switch shut': 'closed' },
    },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
