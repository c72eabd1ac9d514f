/**
 * The fault table of the course, rows on two-port valves and their thermostats, played against the engine. Source of
 * every row: common practice.
 */
import { describe } from 'vitest';
import { call } from './callout.ts';
import { play } from './rows.ts';

const on = 'two-two-ports-unvented';

describe('two two-port valves', () => {
  play([
    {
      row: 'Boiler off, hot water demanded: healthy, L all the way from the programmer to the orange',
      on,
      faults: [],
      steps: [
        [
          'water',
          {
            'tester programmer/HW-ON spur/N': 230,
            'tester cyl-stat/CALL spur/N': 230,
            'tester cut-out/OUT spur/N': 230,
            'tester water-valve/brown spur/N': 230,
            'tester water-valve/orange spur/N': 230,
            'works boiler': true,
          },
        ],
      ],
    },
    {
      row: 'Fires only with both on: end switches in series: the open valve’s orange L, boiler 0; the other’s grey 0',
      on,
      faults: [
        'landed: strip/7 water-valve/orange as strip/8 water-valve/orange',
        'landed: heating-valve/grey strip/1 as heating-valve/grey strip/8',
      ],
      steps: [
        [
          'water',
          { 'tester water-valve/orange spur/N': 230, 'tester boiler/SL spur/N': 0, 'works boiler': false },
        ],
        [
          'heating',
          { 'stands heating-valve': 'open', 'tester heating-valve/grey spur/N': 0, 'works boiler': false },
        ],
        ['both', { 'works boiler': true }],
      ],
    },
    {
      row: 'Heating hot with hot water only, brown 0 but the pipe hot: valve passing',
      on,
      faults: ['heating-valve: passing'],
      steps: [
        [
          'water',
          { 'tester heating-valve/brown spur/N': 0, 'stands heating-valve': 'shut', 'warms radiators': true },
        ],
      ],
    },
    {
      row: 'Heating hot with hot water only, brown L: upstream control',
      on,
      faults: ['room-stat: welded calling'],
      steps: [
        [
          { ...call.water, heating: 'on' },
          { 'tester heating-valve/brown spur/N': 230, 'warms radiators': true },
        ],
      ],
    },
    {
      row: 'Boiler runs, no demand: brown 0, grey L, orange L: end switch welded',
      on,
      faults: ['water-valve: end switch welded'],
      steps: [
        [
          'none',
          {
            'works boiler': true,
            'tester water-valve/brown spur/N': 0,
            'tester water-valve/grey spur/N': 230,
            'tester water-valve/orange spur/N': 230,
            'stands water-valve': 'shut',
          },
        ],
        [{ supply: 'off' }, { 'continuity water-valve/grey water-valve/orange': true }],
      ],
    },
    {
      row: 'Boiler runs, no demand: valve held open by a broken spring after a call',
      on,
      faults: ['heating-valve: spring broken'],
      steps: [
        ['none', { 'works boiler': false }],
        ['heating', { 'works boiler': true }],
        [
          'none',
          {
            'works boiler': true,
            'stands heating-valve': 'open',
            'tester heating-valve/brown spur/N': 0,
            'tester heating-valve/orange spur/N': 230,
          },
        ],
      ],
    },
    {
      row: 'Cut-out tripped: call L, cut-out output 0, brown 0',
      on,
      faults: [],
      steps: [
        [
          { ...call.water, 'cut-out': 'tripped' },
          {
            'tester cyl-stat/CALL spur/N': 230,
            'tester cut-out/OUT spur/N': 0,
            'tester water-valve/brown spur/N': 0,
            'works boiler': false,
          },
        ],
      ],
    },
    {
      row: 'Hot water dead: brown L, neutral good, no travel: motor',
      on,
      faults: ['water-valve: motor dead'],
      steps: [
        [
          'water',
          {
            'tester water-valve/brown water-valve/blue': 230,
            'stands water-valve': 'shut',
            'tester water-valve/orange spur/N': 0,
          },
        ],
        // With the call still made, ohms go round by the other loads: by hand all of them side by side, 365 Ω.
        [{ supply: 'off' }, { 'ohms water-valve/brown water-valve/blue': 365 }],
        ['none', { 'ohms water-valve/brown water-valve/blue': Number.POSITIVE_INFINITY }],
      ],
    },
    {
      row: 'Valve stuck shut: brown L, and it does not travel; stuck is not dead: the winding reads 8.8 kΩ',
      on,
      faults: ['water-valve: stuck shut'],
      steps: [
        ['water', { 'tester water-valve/brown spur/N': 230, 'stands water-valve': 'shut' }],
        [{ ...call.none, supply: 'off' }, { 'ohms water-valve/brown water-valve/blue': 8817 }],
      ],
    },
    {
      row: 'Valve stuck open: brown 0 with the valve open',
      on,
      faults: ['heating-valve: stuck open'],
      steps: [['none', { 'tester heating-valve/brown spur/N': 0, 'stands heating-valve': 'open' }]],
    },
    {
      row: 'Cylinder thermostat open: L at COM, 0 at call with a cold cylinder',
      on,
      faults: ['cyl-stat: call open'],
      steps: [
        [
          'water',
          { 'tester cyl-stat/COM spur/N': 230, 'tester cyl-stat/CALL spur/N': 0, 'works boiler': false },
        ],
      ],
    },
    {
      row: 'Cylinder thermostat welded: hot cylinder, call and brown still L, until the cut-out trips',
      on,
      faults: ['cyl-stat: welded calling'],
      steps: [
        [
          { 'hot-water': 'on', cylinder: 'satisfied' },
          { 'tester cyl-stat/CALL spur/N': 230, 'tester water-valve/brown spur/N': 230, 'warms coil': true },
        ],
        [{ 'cut-out': 'tripped' }, { 'tester water-valve/brown spur/N': 0, 'warms coil': false }],
      ],
    },
    {
      row: 'Grey and orange swapped on a two-port: works unchanged, but orange is permanently live',
      on,
      faults: ['swap: water-valve/grey water-valve/orange'],
      steps: [
        [
          'none',
          {
            'tester water-valve/orange spur/N': 230,
            'tester water-valve/grey spur/N': 0,
            'works boiler': false,
          },
        ],
        ['water', { 'works boiler': true, 'warms coil': true }],
        ['none', { 'works boiler': false }],
      ],
    },
    {
      row: 'Grey and brown swapped on a two-port: the valve never closes; orange follows the demand',
      on,
      faults: ['swap: water-valve/grey water-valve/brown'],
      steps: [
        ['none', { 'stands water-valve': 'open', 'tester water-valve/orange spur/N': 0 }],
        ['water', { 'tester water-valve/orange spur/N': 230, 'works boiler': true }],
        ['none', { 'stands water-valve': 'open', 'works boiler': false }],
      ],
    },
  ]);
});
