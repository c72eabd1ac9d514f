/**
 * The fault table of the course, rows on overrun boilers and frost protection, played against the engine. Source of every
 * row: common practice.
 */
import { describe } from 'vitest';
import { play } from './rows.ts';

describe('overrun and frost', () => {
  play([
    {
      row: 'Permanent live missing on an overrun boiler: switched live on demand, permanent live 0, boiler dead',
      on: 'overrun-three-port',
      faults: ['wire: boiler/L strip/1'],
      steps: [
        [
          'water',
          {
            'tester boiler/SL boiler/N': 230,
            'tester boiler/L boiler/N': 0,
            'works boiler': false,
            'works pump': false,
          },
        ],
      ],
    },
    {
      row: 'Permanent live looped from the switched live: it fires, but has no line left for its overrun',
      on: 'overrun-three-port',
      faults: ['landed: boiler/L strip/1 as boiler/L strip/6'],
      steps: [
        ['water', { 'works boiler': true, 'works pump': true }],
        ['none', { 'tester boiler/L boiler/N': 0, 'works pump': false }],
      ],
    },
    {
      row: 'Pump live tied to orange on an overrun boiler: it latches on after a heating period',
      on: 'overrun-three-port',
      faults: ['link: strip/6 strip/7'],
      steps: [
        ['none', { 'works boiler': false }],
        ['heating', { 'works boiler': true, 'stands three-port': 'A' }],
        ['none', { 'works boiler': true, 'works pump': true, 'tester three-port/orange spur/N': 230 }],
      ],
    },
    {
      row: 'Frost thermostat fires the boiler but opens no valve: switched live L, both browns 0',
      on: 'frost-two-two-ports',
      faults: ['landed: pipe-stat/CALL strip/3 as pipe-stat/CALL strip/6'],
      steps: [
        [
          { frost: 'freezing', pipe: 'cold' },
          {
            'works boiler': true,
            'tester boiler/SL spur/N': 230,
            'tester water-valve/brown spur/N': 0,
            'tester heating-valve/brown spur/N': 0,
            'warms radiators': false,
          },
        ],
      ],
    },
  ]);
});
