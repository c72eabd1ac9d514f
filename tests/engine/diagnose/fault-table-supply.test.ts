/**
 * The fault table of the course, rows on supply, neutral, programmer and extra-low voltage, played against the engine.
 * Source of every row: common practice. "L" in the table is the 230 V lamp of the tester, "0" is no lamp.
 */
import { describe } from 'vitest';
import { play } from './rows.ts';

describe('supply and neutral', () => {
  play([
    {
      row: 'Nothing works, blown fuse: supply side L, load side 0',
      on: 'three-port',
      faults: ['spur: fuse blown'],
      steps: [
        [
          'both',
          {
            'tester spur/(line) spur/(neutral)': 230,
            'tester spur/L spur/N': 0,
            'tester spur/L spur/E': 0,
            'works boiler': false,
          },
        ],
      ],
    },
    {
      row: 'Nothing works, open neutral: L to E 230, L to N low at the strip',
      on: 'three-port',
      faults: ['spur: neutral lost'],
      steps: [
        [
          'both',
          { 'tester strip/1 strip/10': 230, 'tester strip/1 strip/9': 0, 'tester strip/9 strip/10': 230 },
        ],
      ],
    },
    {
      row: 'Nothing works, programmer without display: L and N are at the strip but not at its backplate',
      on: 'three-port',
      faults: ['wire: programmer/L strip/1'],
      steps: [
        [
          'both',
          {
            'tester strip/1 strip/9': 230,
            'tester programmer/L programmer/N': 0,
            'works boiler': false,
          },
        ],
      ],
    },
    {
      row: 'Display on, outputs dead: link from permanent live to the commons missing: L at L, 0 at the commons',
      on: 'six-zones',
      faults: ['wire: strip/3 strip/4'],
      steps: [
        [
          { lounge: 'calling' },
          {
            'tester strip/3 spur/N': 230,
            'tester lounge-stat/COM spur/N': 0,
            'tester lounge-stat/CALL spur/N': 0,
            'stands lounge-valve': 'shut',
          },
        ],
      ],
    },
    {
      row: 'Output with an internal link where the boiler wants volt-free: 230 on the volt-free pair',
      on: 'combi-volt-free',
      faults: ['link: receiver/L receiver/COM'],
      steps: [[{ room: 'satisfied' }, { 'tester boiler/RT1 spur/N': 230 }]],
    },
    {
      row: 'Volt-free pair: to N it should be 0',
      on: 'combi-volt-free',
      faults: [],
      steps: [
        [{ room: 'satisfied' }, { 'tester boiler/RT1 spur/N': 0, 'tester boiler/RT2 spur/N': 0 }],
        [
          { room: 'calling' },
          { 'tester boiler/RT1 spur/N': 0, 'tester boiler/RT2 spur/N': 0, 'works boiler': true },
        ],
      ],
    },
    {
      row: 'Live and neutral reversed: L to E 0, N to E 230, and everything works',
      on: 'three-port',
      faults: ['swap: spur/L spur/N'],
      steps: [
        [
          'both',
          {
            'tester strip/1 strip/10': 0,
            'tester strip/9 strip/10': 230,
            'works boiler': true,
            'warms coil': true,
            'warms radiators': true,
          },
        ],
      ],
    },
    {
      row: 'Lost neutral of a group: neutral of the device to E rises to 230 with a load on',
      on: 'three-port',
      faults: ['wire: strip/8 strip/9'],
      steps: [
        [
          'water',
          {
            'tester boiler/N strip/10': 230,
            'tester strip/9 strip/10': 0,
            'tester boiler/L boiler/N': 0,
            'works boiler': false,
          },
        ],
      ],
    },
    {
      row: 'Neutral missing at the valve only: brown to E 230, brown to local N 0, other devices fine',
      on: 'two-two-ports-unvented',
      faults: ['wire: strip/9 water-valve/blue'],
      steps: [
        [
          'water',
          {
            'tester water-valve/brown strip/11': 230,
            'tester water-valve/brown water-valve/blue': 0,
            'stands water-valve': 'shut',
          },
        ],
        ['heating', { 'works boiler': true, 'warms radiators': true }],
      ],
    },
    {
      row: 'Core touching the case: the fuse goes when the valve is energised, and brown to earth is joined',
      on: 'two-two-ports-unvented',
      faults: ['water-valve: live case'],
      steps: [
        ['heating', { 'warms radiators': true }],
        ['water', { 'tester spur/L spur/N': 0, 'works boiler': false }],
        ['heating', { 'tester spur/L spur/N': 0, 'warms radiators': false }],
        [{ supply: 'off' }, { 'continuity water-valve/brown water-valve/earth': true }],
      ],
    },
    {
      row: 'Voltage on a dead core by meter only: 20 to 110 V at high impedance, nothing on the tester',
      on: 'two-two-ports-unvented',
      faults: [],
      steps: [
        ['none', { 'volts cyl-stat/COM spur/N': 58, 'tester cyl-stat/COM spur/N': 0 }],
        ['water', { 'volts cyl-stat/COM spur/N': 230, 'tester cyl-stat/COM spur/N': 230 }],
        [{ supply: 'off' }, { 'volts cyl-stat/COM spur/N': 0 }],
      ],
    },
    {
      row: 'Room thermostat’s neutral missing: nothing across its heater, and it works all the same',
      on: 'three-port',
      faults: ['wire: room-stat/N strip/9'],
      steps: [
        [
          'heating',
          {
            'tester room-stat/CALL strip/9': 230,
            'tester room-stat/CALL room-stat/N': 0,
            'warms radiators': true,
          },
        ],
      ],
    },
  ]);
});
