import type { PartKind } from '../model/part.ts';

/** Port B at rest (the cylinder), mid, port A at full travel (the radiators). */
const positions = ['B', 'mid', 'A'] as const;
const beforeMid = (position: string) => position === 'B';
const pastMid = (position: string) => position === 'A';

/**
 * Mid-position three-port valve: a motor that cannot run backwards, a spring, two changeover microswitches and
 * a diode with a resistor. Full alternating voltage drives the motor towards port A and may stall there; half a
 * wave locks the rotor where it is; nothing lets the spring return the valve towards port B.
 *
 * - Switch 1 changes over just before mid: at rest it joins the motor to white, operated to grey.
 * - Switch 2 changes over just after mid: at rest it feeds the motor from white through the diode, operated it
 *   joins white to orange (both ways).
 *
 * Where sources disagree: simple tables in print say that grey alone leaves the valve where it last stood. The
 * published analyses of the circuit say that from mid it winds on to port A. Both agree from port B and from
 * port A. This model does what the circuit does; "last position" is only the rule of thumb.
 */
export const midPositionValve: PartKind = {
  kind: 'mid-position-valve',
  title: 'Three-port valve',
  terminals: [
    { id: 'white', core: 'white', duty: 'switched', does: 'Heating is wanted.' },
    {
      id: 'grey',
      core: 'grey',
      duty: 'switched',
      does: 'Hot water is not wanted: off, or the cylinder is hot.',
    },
    {
      id: 'orange',
      core: 'orange',
      duty: 'switched',
      does: 'Live out to boiler and pump, made from white past mid.',
    },
    { id: 'blue', core: 'blue', duty: 'neutral', does: 'Neutral of the motor.' },
    { id: 'earth', core: 'green-yellow', duty: 'earth', does: 'Earth of the metal head.' },
  ],
  inner: ['motor', 'diode'],
  contacts: [
    { id: 'switch 1 at rest', between: ['white', 'motor'], closed: ({ position }) => beforeMid(position) },
    { id: 'switch 1 operated', between: ['grey', 'motor'], closed: ({ position }) => !beforeMid(position) },
    { id: 'switch 2 at rest', between: ['white', 'diode'], closed: ({ position }) => !pastMid(position) },
    { id: 'switch 2 operated', between: ['white', 'orange'], closed: ({ position }) => pastMid(position) },
  ],
  loads: [
    { id: 'motor', between: ['motor', 'blue'] },
    { id: 'half wave', between: ['diode', 'blue'], via: 'motor' },
  ],
  elements: [
    // 6 W at 230 V, taken at unity power factor: the winding's own resistance and inductance are not published.
    { id: 'motor', between: ['motor', 'blue'], ohms: 8_817 },
    // Assumption: the resistor in series with the diode is not published; small against the winding.
    // Nor is which way the diode faces: only the sign of the half wave hangs on it.
    { id: 'half wave', between: ['diode', 'motor'], ohms: 1_000, diode: true },
    // 270 kΩ is published; that it runs from white to the motor, past switch 2, is inferred from its purpose.
    { id: 'demagnetising resistor', between: ['white', 'motor'], ohms: 270_000 },
  ],
  motion: { positions, drive: 'motor', hold: 'half wave' },
  ports: ['AB', 'A', 'B'],
  passes: (position) => {
    if (position === 'B') return [['AB', 'B']];
    if (position === 'A') return [['AB', 'A']];
    return [
      ['AB', 'A'],
      ['AB', 'B'],
    ];
  },
  faults: [
    { id: 'diode short', between: ['diode', 'motor'] },
    { id: 'case', between: ['motor', 'earth'] },
  ],
  failures: [
    { id: 'motor dead', says: 'has a dead motor', dead: ['motor', 'half wave'] },
    ...positions.map((position) => ({
      id: `stuck at ${position}`,
      says: `is stuck at ${position === 'mid' ? 'mid' : `port ${position}`}`,
      stuck: position,
    })),
    {
      id: 'passing',
      says: 'lets by at a port that should be shut',
      leaks: [
        ['AB', 'A'],
        ['AB', 'B'],
      ],
    },
    { id: 'spring broken', says: 'has a broken spring', unsprung: true },
    { id: 'diode open', says: 'has an open diode', dead: ['half wave'] },
    { id: 'diode short', says: 'has a shorted diode', contacts: { 'diode short': 'closed' } },
    ...(['switch 1', 'switch 2'] as const).flatMap((name) => [
      {
        id: `${name} welded at rest`,
        says: `has ${name} welded at rest`,
        contacts: { [`${name} at rest`]: 'closed', [`${name} operated`]: 'open' } as const,
      },
      {
        id: `${name} welded operated`,
        says: `has ${name} welded operated`,
        contacts: { [`${name} at rest`]: 'open', [`${name} operated`]: 'closed' } as const,
      },
      {
        id: `${name} open at rest`,
        says: `has ${name} burnt out at rest`,
        contacts: { [`${name} at rest`]: 'open' } as const,
      },
      {
        id: `${name} open operated`,
        says: `has ${name} burnt out when operated`,
        contacts: { [`${name} operated`]: 'open' } as const,
      },
    ]),
    { id: 'live case', says: 'has a live core touching its case', contacts: { case: 'closed' } },
  ],
};
