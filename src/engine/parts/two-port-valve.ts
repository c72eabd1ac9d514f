import { motorFailures } from '../model/motor-failures.ts';
import type { PartKind } from '../model/part.ts';

const positions = ['shut', 'part open', 'open'] as const;

/**
 * Spring-return two-port valve: the motor opens it against the spring and stalls there; without supply the
 * spring shuts it, as Approved Document G 3.31 (2015 edition with 2016 amendments) asks of a valve driven by a
 * cut-out. The end switch is volt-free and makes near full travel (common practice).
 */
export const twoPortValve: PartKind = {
  kind: 'two-port-valve',
  title: 'Two-port valve',
  terminals: [
    { id: 'brown', core: 'brown', duty: 'switched', does: 'Live in: opens the valve.' },
    { id: 'grey', core: 'grey', duty: 'switched', does: 'Feed to the end switch: permanent line.' },
    {
      id: 'orange',
      core: 'orange',
      duty: 'switched',
      does: 'Out of the end switch: live once the valve is open.',
    },
    { id: 'blue', core: 'blue', duty: 'neutral', does: 'Neutral of the motor.' },
    { id: 'earth', core: 'green-yellow', duty: 'earth', does: 'Earth of the metal head.' },
  ],
  contacts: [
    // 2.2 A inductive is the least that is published for an end switch; others are made for up to 3 A.
    {
      id: 'end switch',
      between: ['grey', 'orange'],
      closed: ({ position }) => position === 'open',
      amps: 2.2,
    },
  ],
  loads: [{ id: 'motor', between: ['brown', 'blue'] }],
  // 6 W at 230 V, taken at unity power factor.
  elements: [{ id: 'motor', between: ['brown', 'blue'], ohms: 8_817 }],
  motion: { positions, drive: 'motor' },
  endSwitch: { feed: 'grey', out: 'orange' },
  ports: ['in', 'out'],
  passes: (position) => (position === 'shut' ? [] : [['in', 'out']]),
  faults: [{ id: 'case', between: ['brown', 'earth'] }],
  failures: [
    ...motorFailures(positions),
    { id: 'passing', says: 'lets by while shut', leaks: [['in', 'out']] },
    { id: 'spring broken', says: 'has a broken spring', unsprung: true },
    { id: 'end switch welded', says: 'has its end switch welded', contacts: { 'end switch': 'closed' } },
    { id: 'end switch open', says: 'never makes its end switch', contacts: { 'end switch': 'open' } },
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
