import type { SystemPart, SystemSpec } from '../../../src/engine/model/system.ts';

const part = (kind: string, name: string, short = name): SystemPart => ({ kind, name, short });

const loop = (
  id: string,
  parts: Record<string, SystemPart>,
  pipes: readonly (readonly [string, string])[],
): SystemSpec => ({
  id,
  title: id,
  parts: { spur: part('fused-spur', 'Spur'), boiler: part('boiler', 'Boiler'), ...parts },
  inputs: { supply: { label: 'Supply' } },
  pipes,
  demands: [],
});

const pump = part('pump', 'Pump');
const radiators = part('radiators', 'Radiators');
const coil = part('cylinder-coil', 'Cylinder coil', 'Cylinder');
const twoPort = part('two-port-valve', 'Two-port valve');

/** Radiators alone on a pumped loop. */
const radiatorsOnly = loop('radiators-only', { pump, radiators }, [
  ['boiler/flow', 'pump/in'],
  ['pump/out', 'radiators/in'],
  ['radiators/out', 'boiler/return'],
]);

/** Two two-port valves off a tee, the cylinder named first, the pump in the return. */
const twoTwoPorts = loop('two-two-ports', { pump, water: twoPort, heating: twoPort, coil, radiators }, [
  ['boiler/flow', 'water/in'],
  ['boiler/flow', 'heating/in'],
  ['water/out', 'coil/in'],
  ['heating/out', 'radiators/in'],
  ['coil/out', 'pump/in'],
  ['radiators/out', 'pump/in'],
  ['pump/out', 'boiler/return'],
]);

/** A plain three-port: no two-port before the coil. */
const plainThreePort = loop(
  'plain-three-port',
  { pump, valve: part('mid-position-valve', 'Three-port valve'), coil, radiators },
  [
    ['boiler/flow', 'pump/in'],
    ['pump/out', 'valve/AB'],
    ['valve/A', 'radiators/in'],
    ['valve/B', 'coil/in'],
    ['radiators/out', 'boiler/return'],
    ['coil/out', 'boiler/return'],
  ],
);

/** Two heating zones and a cylinder, each on its own two-port. */
const threeZones = loop(
  'three-zones',
  {
    pump,
    v1: twoPort,
    v2: twoPort,
    v3: twoPort,
    coil,
    down: { ...radiators, short: 'Lower floor' },
    up: { ...radiators, short: 'Upper floor' },
  },
  [
    ['boiler/flow', 'pump/in'],
    ['pump/out', 'v1/in'],
    ['pump/out', 'v2/in'],
    ['pump/out', 'v3/in'],
    ['v1/out', 'coil/in'],
    ['v2/out', 'down/in'],
    ['v3/out', 'up/in'],
    ['coil/out', 'boiler/return'],
    ['down/out', 'boiler/return'],
    ['up/out', 'boiler/return'],
  ],
);

/** A three-port that shares its water between two floors. */
const twoFloors = loop(
  'two-floors',
  {
    pump,
    valve: part('mid-position-valve', 'Three-port valve'),
    down: { ...radiators, short: 'Lower floor' },
    up: { ...radiators, short: 'Upper floor' },
  },
  [
    ['boiler/flow', 'pump/in'],
    ['pump/out', 'valve/AB'],
    ['valve/A', 'up/in'],
    ['valve/B', 'down/in'],
    ['up/out', 'boiler/return'],
    ['down/out', 'boiler/return'],
  ],
);

export const specs: readonly SystemSpec[] = [
  radiatorsOnly,
  twoTwoPorts,
  plainThreePort,
  threeZones,
  twoFloors,
];
