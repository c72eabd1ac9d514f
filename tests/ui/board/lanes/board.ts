import type { BoardShape, Pin, Wire } from '../../../../src/ui/board/lanes/route.ts';

const row = (parts: Record<string, { at: number; leads: string }>): Pin[] =>
  Object.entries(parts).flatMap(([part, { at, leads }]) =>
    leads.split(' ').map((lead, i) => ({ id: `${part}/${lead}`, x: at + 35 * i })),
  );

/** The job's own parts on a board 784 px wide. */
export const board: BoardShape = {
  upper: row({
    spur: { at: 37, leads: 'L N E' },
    programmer: { at: 170, leads: 'L N HW-ON HW-OFF CH-ON CH-OFF' },
    'room-stat': { at: 409, leads: 'COM CALL SAT N' },
    'cyl-stat': { at: 578, leads: 'COM CALL SAT' },
    'cut-out': { at: 712, leads: 'IN OUT' },
  }),
  lower: row({
    'three-port': { at: 37, leads: 'white grey orange blue earth' },
    'two-port': { at: 262, leads: 'brown grey orange blue earth' },
    pump: { at: 487, leads: 'L N E' },
    boiler: { at: 642, leads: 'L SL N E' },
  }),
  strip: Array.from({ length: 12 }, (_, i) => ({ id: `${i + 1}`, x: 45 + 63 * i, width: 49 })),
  stripHeight: 52,
  left: 2,
  right: 782,
  lane: 14,
  slot: 7,
  minUpper: 150,
  minLower: 150,
  maxUpper: 190,
  maxLower: 190,
};

const landed: Record<string, string> = {
  1: 'spur/L programmer/L boiler/L two-port/grey',
  2: 'programmer/CH-ON room-stat/COM',
  3: 'room-stat/CALL three-port/white',
  4: 'programmer/HW-ON cyl-stat/COM',
  5: 'programmer/HW-OFF cyl-stat/SAT three-port/grey',
  6: 'cyl-stat/CALL cut-out/IN',
  7: 'cut-out/OUT two-port/brown',
  8: 'two-port/orange three-port/orange boiler/SL pump/L',
  11: 'spur/N programmer/N room-stat/N three-port/blue two-port/blue pump/N boiler/N',
  12: 'spur/E three-port/earth two-port/earth pump/E boiler/E',
};

/** The job fully wired, as the course teaches it: 33 wires. */
export const job: Wire[] = Object.entries(landed).flatMap(([terminal, leads]) =>
  leads.split(' ').map((lead) => ({ key: `${lead}~${terminal}`, ends: [lead, terminal] })),
);
