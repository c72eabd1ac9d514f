/**
 * The readings against ngspice: the failed circuit spelled out as a netlist, with the instrument in it as a resistor and
 * the coupling of floating cores as another. The netlist is written without the engine's nets, evaluator or meter.
 */
import { describe, expect, test } from 'vitest';
import { COUPLING_OHMS } from '../../../src/engine/diagnose/cluster.ts';
import { outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import { lampAt, MULTIMETER_OHMS, TESTER_OHMS } from '../../../src/engine/diagnose/instrument.ts';
import type { Stand } from '../../../src/engine/diagnose/world.ts';
import type { Settings, System } from '../../../src/engine/model/system.ts';
import { netlist, voltsName } from '../../spice/netlist.ts';
import { rms, run } from '../../spice/ngspice.ts';
import { must } from '../support/must.ts';
import { call, fault, site, Visit } from './callout.ts';

/** The failed system with its contacts and dead loads written into its parts, where the netlist looks for them. */
const spelledOut = (failed: System): System => ({
  ...failed,
  parts: failed.parts.map((part, k) => ({
    ...part,
    kind: {
      ...part.kind,
      contacts: failed.contacts.filter((one) => one.part === k).map(({ spec }) => spec),
      elements: (part.kind.elements ?? []).filter(
        ({ id }) => !failed.loads.some((load) => load.part === k && load.spec.id === id && load.dead),
      ),
    },
  })),
});

/** Volts RMS in ngspice between two terminals with so many ohms across them. */
async function simulate(visit: Visit, stand: Stand, [a, b]: readonly [string, string], ohms: number) {
  const { system } = stand;
  const { wires } = visit.site;
  const node = (name: string) => must(system.nodeOf.get(name), name);
  const one = must(visit.world.candidate);
  const broken = one.failures.flatMap((failure) =>
    'wire' in failure ? [[...failure.wire].sort().join()] : [],
  );
  const whole = wires.filter((wire) => !broken.includes([...wire].sort().join()));
  // One coupling for each group of joined cores that floats or not: beside a load it is nothing.
  const groups = new Map(whole.map(([end]) => [must(stand.nets[node(end)]), node(end)]));
  const lines = [
    ...netlist(spelledOut(system), whole, { inputs: visit.setup.inputs, place: stand.place }),
    `Rinstrument n${node(a)} n${node(b)} ${ohms}`,
    ...[...groups.values()].map((end, k) => `Rcoupling${k} n${system.supply.line} n${end} ${COUPLING_OHMS}`),
  ];
  const { time, wave } = await run(lines);
  const [from, to] = [wave(voltsName(node(a))), wave(voltsName(node(b)))];
  return rms(
    time,
    from.map((volts, k) => volts - must(to[k])),
  );
}

const cases: [on: string, faults: string[], settings: Settings, ends: [string, string][]][] = [
  [
    'three-port',
    ['wire: programmer/HW-OFF strip/5'],
    { ...call.heating, cylinder: 'calling' },
    [
      ['three-port/grey', 'spur/N'],
      ['three-port/white', 'three-port/grey'],
      ['three-port/orange', 'spur/N'],
    ],
  ],
  [
    'three-port',
    ['three-port: switch 2 open operated'],
    call.heating,
    [
      ['three-port/orange', 'spur/N'],
      ['three-port/grey', 'spur/E'],
    ],
  ],
  [
    'three-port',
    ['three-port: motor dead'],
    call.heating,
    [
      ['three-port/white', 'three-port/blue'],
      ['cyl-stat/CALL', 'spur/N'],
    ],
  ],
  ['three-port', ['three-port: diode open'], call.both, [['three-port/grey', 'spur/N']]],
  ['three-port', ['three-port: stuck at A'], call.water, [['three-port/white', 'spur/N']]],
  [
    'three-port',
    ['wire: strip/8 strip/9'],
    call.water,
    [
      ['boiler/N', 'strip/10'],
      ['pump/L', 'pump/N'],
    ],
  ],
  [
    'three-port',
    ['wire: strip/8 strip/9'],
    call.none,
    [
      ['pump/N', 'strip/10'],
      ['pump/L', 'strip/10'],
    ],
  ],
  [
    'two-two-ports-unvented',
    ['wire: cut-out/OUT strip/6'],
    call.water,
    [
      ['cut-out/OUT', 'spur/N'],
      ['water-valve/brown', 'spur/N'],
    ],
  ],
  [
    'two-two-ports-unvented',
    ['cyl-stat: call open'],
    call.water,
    [
      ['cyl-stat/COM', 'spur/N'],
      ['cyl-stat/CALL', 'spur/E'],
    ],
  ],
  [
    'two-two-ports-unvented',
    ['wire: strip/9 water-valve/blue'],
    call.water,
    [['water-valve/blue', 'spur/E']],
  ],
  [
    'two-two-ports-unvented',
    ['wire: programmer/HW-ON strip/4'],
    call.none,
    [
      ['cyl-stat/COM', 'spur/N'],
      ['cyl-stat/COM', 'spur/L'],
    ],
  ],
];

describe('readings of a failed circuit', () => {
  test.each(cases)(
    '%s, %j: multimeter and tester agree with ngspice',
    async (on, faults, settings, pairs) => {
      const where = site(on);
      const visit = new Visit(where, fault(where, ...faults)).set(settings);
      for (const between of pairs) {
        for (const stand of visit.world.stands) {
          const shown = (instrument: 'volts' | 'tester') =>
            outcomeAt(visit.setup, stand, { kind: 'reads', instrument, between });
          const high = await simulate(visit, stand, between, MULTIMETER_OHMS);
          // 3 %: the bleeds of the netlist are 1 GΩ for each terminal, several to a core, beside a meter of 10 MΩ.
          expect(Math.abs(Number(shown('volts')) - high), `${between}: ${high} V`).toBeLessThan(
            1 + 0.02 * 230,
          );
          const low = await simulate(visit, stand, between, TESTER_OHMS);
          expect(shown('tester'), `${between}: ${low} V`).toBe(lampAt(low));
        }
      }
    },
  );
});
