import { buildSystem } from '../../../src/engine/model/build.ts';
import type { PartKind } from '../../../src/engine/model/part.ts';
import type { Demand, System, SystemPart, SystemSpec } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';

/** One channel of time control. */
const timeSwitch: PartKind = {
  kind: 'time-switch',
  title: 'Time switch',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the clock.' },
    { id: 'ON', core: 'brown', duty: 'switched', does: 'Live while on.' },
  ],
  inputs: [{ slot: 'time', settings: ['off', 'on'] }],
  contacts: [{ id: 'on', between: ['L', 'ON'], closed: ({ setting }) => setting.time === 'on' }],
  loads: [{ id: 'clock', between: ['L', 'N'] }],
  permanentLine: ['L'],
};

const range = (zones: number): number[] => Array.from({ length: zones }, (_, k) => k + 1);
const named = <T>(entries: readonly (readonly [string, T])[]): Record<string, T> =>
  Object.fromEntries(entries);

/**
 * A system with hot water and this many heating zones, each with its two-port, time switch and room thermostat; frost
 * protection by a frost and a pipe thermostat in series calls the first zone. Layout: common practice.
 */
export function zonesSystem(zones: number): System {
  const all = range(zones);
  const part = (kind: string, id: string, inputs?: Record<string, string>): [string, SystemPart] => [
    id,
    { kind, name: id, ...(inputs ? { inputs } : {}) },
  ];
  const ids = all.flatMap((k) => [`heating-${k}`, `room-${k}`]);
  const spec: SystemSpec = {
    id: `zones-${zones}`,
    title: `Hot water and ${zones} zones`,
    parts: named([
      part('fused-spur', 'spur'),
      part('time-switch', 'water-time', { time: 'hot-water' }),
      part('cylinder-thermostat', 'cyl-stat', { call: 'cylinder' }),
      part('energy-cut-out', 'cut-out', { trip: 'cut-out' }),
      part('two-port-valve', 'water-valve'),
      part('cylinder-thermostat', 'frost-stat', { call: 'frost' }),
      part('cylinder-thermostat', 'pipe-stat', { call: 'pipe' }),
      ...all.flatMap((k) => [
        part('time-switch', `time-${k}`, { time: `heating-${k}` }),
        part('room-thermostat', `stat-${k}`, { call: `room-${k}` }),
        part('two-port-valve', `valve-${k}`),
        part('radiators', `radiators-${k}`),
      ]),
      part('pump', 'pump'),
      part('boiler', 'boiler'),
      part('cylinder-coil', 'coil'),
    ]),
    inputs: named(
      ['supply', 'hot-water', 'cylinder', 'cut-out', ...ids, 'frost', 'pipe'].map((id) => [
        id,
        { label: id },
      ]),
    ),
    pipes: [
      ['boiler/flow', 'pump/in'],
      ['pump/out', 'water-valve/in'],
      ['water-valve/out', 'coil/in'],
      ['coil/out', 'boiler/return'],
      ...all.flatMap((k): [string, string][] => [
        ['pump/out', `valve-${k}/in`],
        [`valve-${k}/out`, `radiators-${k}/in`],
        [`radiators-${k}/out`, 'boiler/return'],
      ]),
    ],
    demands: [
      {
        id: 'water',
        says: 'hot water',
        when: { 'hot-water': 'on', cylinder: 'calling', 'cut-out': 'healthy' },
        heats: 'coil',
        valve: 'water-valve',
      },
      ...all.map((k): Demand => {
        const when = { [`heating-${k}`]: 'on', [`room-${k}`]: 'calling' };
        return {
          id: `heating-${k}`,
          says: `heating of zone ${k}`,
          when: k === 1 ? [when, { frost: 'calling', pipe: 'calling' }] : when,
          heats: `radiators-${k}`,
          coldWhenNotCalled: true,
        };
      }),
    ],
  };
  return buildSystem(spec, (kind, options) =>
    kind === 'time-switch' ? timeSwitch : findKind(kind, options),
  );
}

/** Its right wiring, from part to part: end switches side by side, the cut-out in the feed of the hot water valve. */
export function zonesRight(zones: number): Wire[] {
  const all = range(zones);
  const valves = ['water-valve', ...all.map((k) => `valve-${k}`)];
  const clocks = ['water-time', ...all.map((k) => `time-${k}`)];
  const star = (hub: string, ends: readonly string[]): Wire[] => ends.map((end): Wire => [hub, end]);
  return [
    ...star('spur/L', ['boiler/L', 'frost-stat/COM', ...clocks.map((id) => `${id}/L`)]),
    ...star(
      'spur/L',
      valves.map((id) => `${id}/grey`),
    ),
    ...star('boiler/SL', ['pump/L', ...valves.map((id) => `${id}/orange`)]),
    ...star('spur/N', [
      'boiler/N',
      'pump/N',
      ...[...clocks, ...all.map((k) => `stat-${k}`)].map((id) => `${id}/N`),
    ]),
    ...star(
      'spur/N',
      valves.map((id) => `${id}/blue`),
    ),
    ...star('spur/E', ['boiler/E', 'pump/E', ...valves.map((id) => `${id}/earth`)]),
    ['water-time/ON', 'cyl-stat/COM'],
    ['cyl-stat/CALL', 'cut-out/IN'],
    ['cut-out/OUT', 'water-valve/brown'],
    ['frost-stat/CALL', 'pipe-stat/COM'],
    ['pipe-stat/CALL', 'valve-1/brown'],
    ...all.flatMap((k): Wire[] => [
      [`time-${k}/ON`, `stat-${k}/COM`],
      [`stat-${k}/CALL`, `valve-${k}/brown`],
    ]),
  ];
}

/** Wrong wirings of the same system, each a slip that is made on site. */
export function zonesWrong(zones: number): { readonly id: string; readonly wires: Wire[] }[] {
  const right = zonesRight(zones);
  const moved = (lift: readonly Wire[], land: readonly Wire[]): Wire[] => [
    ...right.filter(([a, b]) => !lift.some(([c, d]) => a === c && b === d)),
    ...land,
  ];
  const last = `valve-${zones}`;
  const greys = ['water-valve', ...range(zones).map((k) => `valve-${k}`)];
  return [
    {
      id: 'the end switch of the last zone is fed from its call',
      wires: moved([['spur/L', `${last}/grey`]], [[`${last}/brown`, `${last}/grey`]]),
    },
    {
      id: 'every end switch is fed from its own call',
      wires: moved(
        greys.map((id): Wire => ['spur/L', `${id}/grey`]),
        greys.map((id): Wire => [`${id}/brown`, `${id}/grey`]),
      ),
    },
    {
      id: 'the end switches are one after the other',
      wires: moved(
        greys.slice(1).flatMap((id, k): Wire[] => [
          ['spur/L', `${id}/grey`],
          ['boiler/SL', `${greys[k]}/orange`],
        ]),
        greys.slice(1).map((id, k): Wire => [`${greys[k]}/orange`, `${id}/grey`]),
      ),
    },
    {
      id: 'the pipe thermostat calls the boiler and not the zone',
      wires: moved([['pipe-stat/CALL', 'valve-1/brown']], [['pipe-stat/CALL', 'boiler/SL']]),
    },
    {
      id: 'the first and the last zone have each other’s call',
      wires: moved(
        [
          ['stat-1/CALL', 'valve-1/brown'],
          [`stat-${zones}/CALL`, `${last}/brown`],
        ],
        [
          ['stat-1/CALL', `${last}/brown`],
          [`stat-${zones}/CALL`, 'valve-1/brown'],
        ],
      ),
    },
    { id: 'the neutrals are not joined to the supply', wires: right.filter(([a]) => a !== 'spur/N') },
    { id: 'the cut-out is bridged', wires: [...right, ['cut-out/IN', 'cut-out/OUT']] },
    { id: 'line and neutral are joined at the boiler', wires: [...right, ['boiler/SL', 'boiler/N']] },
  ];
}
