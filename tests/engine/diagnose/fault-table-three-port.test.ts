/**
 * The fault table of the course, rows on three-port valves, played against the engine. Source of every row: common
 * practice, with the truth table of the valve as published (see `parts/mid-position-valve.ts`).
 */
import { describe } from 'vitest';
import { call } from './callout.ts';
import { play } from './rows.ts';

const on = 'three-port';

describe('mid-position valve', () => {
  play([
    {
      // The table says "grey 0". A meter sees more: at mid the grey core is joined to the motor and shows its half wave,
      // 146 V by hand: 230 V over 8,817 Ω and 1,000 Ω one way, 270 kΩ the other (tests/spice/through-load.test.ts).
      row: 'Heating alone dead, works when hot water is on too: white L, grey not L, orange 0, valve at mid',
      on,
      faults: ['wire: programmer/HW-OFF strip/5'],
      steps: [
        ['both', { 'warms radiators': true }],
        [
          { ...call.heating, cylinder: 'calling' },
          {
            'tester three-port/white spur/N': 230,
            'volts three-port/grey spur/N': 146,
            'tester three-port/grey spur/N': 120,
            'tester three-port/orange spur/N': 0,
            'stands three-port': 'mid',
            'tester programmer/HW-OFF spur/N': 230,
            'warms radiators': false,
          },
        ],
      ],
    },
    {
      row: 'Same symptom, grey good: switch 2 open: white L, grey L, valve at A, orange 0',
      on,
      faults: ['three-port: switch 2 open operated'],
      steps: [
        [
          'heating',
          {
            'tester three-port/white spur/N': 230,
            'tester three-port/grey spur/N': 230,
            'tester three-port/orange spur/N': 0,
            'stands three-port': 'A',
            'works boiler': false,
          },
        ],
      ],
    },
    {
      row: 'Same symptom, motor dead: white L, grey L, valve still at B, orange 0; with both on only the hot water heats',
      on,
      faults: ['three-port: motor dead'],
      steps: [
        ['water', { 'warms coil': true }],
        ['both', { 'warms coil': true, 'warms radiators': false }],
        [
          'heating',
          {
            'tester three-port/white spur/N': 230,
            'tester three-port/grey spur/N': 230,
            'tester three-port/orange spur/N': 0,
            'stands three-port': 'B',
            'works boiler': false,
          },
        ],
        // What is left is the heater of the room thermostat, 264.5 kΩ; a sound winding would read 8.5 kΩ beside it.
        [{ ...call.none, supply: 'off' }, { 'ohms three-port/white three-port/blue': 264_500 }],
      ],
    },
    {
      row: 'Heating hot with hot water only, white 0: valve stuck at mid',
      on,
      faults: ['three-port: stuck at mid'],
      steps: [['water', { 'tester three-port/white spur/N': 0, 'warms radiators': true }]],
    },
    {
      row: 'Heating hot with hot water only, white 0 at first: spring broken after both were on',
      on,
      faults: ['three-port: spring broken'],
      steps: [
        ['water', { 'warms radiators': false }],
        ['both', { 'stands three-port': 'mid' }],
        ['water', { 'tester three-port/white spur/N': 0, 'warms radiators': true }],
      ],
    },
    {
      row: 'Heating hot with hot water only, white L: room thermostat welded',
      on,
      faults: ['room-stat: welded calling'],
      steps: [
        [
          { ...call.water, heating: 'on' },
          {
            'tester three-port/white spur/N': 230,
            'tester room-stat/CALL spur/N': 230,
            'warms radiators': true,
          },
        ],
      ],
    },
    {
      row: 'Boiler runs with no demand: orange L with white 0 and grey L: a stray link',
      on,
      faults: ['link: strip/1 strip/6'],
      steps: [
        [
          'none',
          {
            'works boiler': true,
            'tester three-port/orange spur/N': 230,
            'tester three-port/white spur/N': 0,
            'tester three-port/grey spur/N': 230,
          },
        ],
      ],
    },
    {
      // The table lists it with grey L; the changeover that is welded on its call cannot make satisfied, so grey is 0.
      row: 'Boiler runs with a hot cylinder: orange L: cylinder thermostat welded on its call',
      on,
      faults: ['cyl-stat: welded calling'],
      steps: [
        [
          { 'hot-water': 'on', cylinder: 'satisfied' },
          {
            'works boiler': true,
            'tester three-port/orange spur/N': 230,
            'tester cyl-stat/CALL spur/N': 230,
            'tester three-port/grey spur/N': 0,
          },
        ],
      ],
    },
    {
      row: 'Cylinder thermostat with both poles burnt: L at COM, 0 at call, and 0 on the grey line of a hot cylinder too',
      on,
      faults: ['cyl-stat: call open', 'cyl-stat: satisfied open'],
      steps: [
        [
          'water',
          { 'tester cyl-stat/COM spur/N': 230, 'tester cyl-stat/CALL spur/N': 0, 'works boiler': false },
        ],
        [{ cylinder: 'satisfied' }, { 'tester three-port/grey spur/N': 0 }],
      ],
    },
    {
      row: 'Call and satisfied swapped: cold cylinder: grey L, orange 0, no hot water; hot cylinder: orange L, it runs',
      on,
      faults: ['swap: cyl-stat/CALL cyl-stat/SAT'],
      steps: [
        [
          'water',
          {
            'tester three-port/grey spur/N': 230,
            'tester three-port/orange spur/N': 0,
            'works boiler': false,
          },
        ],
        [{ cylinder: 'satisfied' }, { 'tester three-port/orange spur/N': 230, 'works boiler': true }],
      ],
    },
    {
      row: 'White and grey swapped: hot water only is right, heating only is right, both give one only',
      on,
      faults: ['swap: three-port/white three-port/grey'],
      steps: [
        ['water', { 'warms coil': true, 'warms radiators': false }],
        ['both', { 'stands three-port': 'B', 'warms coil': true, 'warms radiators': false }],
        ['heating', { 'stands three-port': 'A', 'warms coil': false, 'warms radiators': true }],
        ['both', { 'stands three-port': 'A', 'warms coil': false, 'warms radiators': true }],
        // Both off parks it at mid, the motor on a half wave.
        ['none', { 'stands three-port': 'mid' }],
      ],
    },
    {
      row: 'Grey and orange swapped: both wind to A, hot water alone then heats radiators, heating alone parks at mid',
      on,
      faults: ['swap: three-port/grey three-port/orange'],
      steps: [
        ['both', { 'stands three-port': 'A', 'warms radiators': true, 'warms coil': false }],
        ['water', { 'stands three-port': 'A', 'warms radiators': true }],
        ['none', { 'stands three-port': 'B' }],
        ['heating', { 'stands three-port': 'mid', 'works boiler': false }],
      ],
    },
  ]);
});

describe('diverter', () => {
  play([
    {
      row: 'Hot water fine, no heating: priority works as designed while the cylinder calls',
      on: 'diverter-three-port',
      faults: [],
      steps: [
        ['both', { 'stands diverter': 'driven', 'warms coil': true, 'warms radiators': false }],
        [{ cylinder: 'satisfied' }, { 'stands diverter': 'rest', 'warms radiators': true }],
      ],
    },
  ]);
});
