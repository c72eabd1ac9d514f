import type { PartKind, PartOptions } from '../model/part.ts';
import { boiler } from './boiler.ts';
import { energyCutOut } from './cut-out.ts';
import { midPositionValve } from './mid-position-valve.ts';
import { cylinderCoil, radiators } from './pipework.ts';
import { twoChannelProgrammer } from './programmer.ts';
import { pump } from './pump.ts';
import { fusedSpur } from './spur.ts';
import { strip } from './strip.ts';
import { cylinderThermostat, roomThermostat } from './thermostats.ts';
import { twoPortValve } from './two-port-valve.ts';

type Maker = (options: PartOptions) => PartKind;
const fixed =
  (kind: PartKind): Maker =>
  () =>
    kind;

const kinds = new Map<string, Maker>([
  ...[
    fusedSpur,
    twoChannelProgrammer,
    roomThermostat,
    cylinderThermostat,
    energyCutOut,
    midPositionValve,
    twoPortValve,
    pump,
    boiler,
    cylinderCoil,
    radiators,
  ].map((kind): [string, Maker] => [kind.kind, fixed(kind)]),
  ['strip', strip],
]);

/** The kind of part with this name, or undefined. */
export const findKind = (kind: string, options: PartOptions): PartKind | undefined =>
  kinds.get(kind)?.(options);

/** Names of all kinds of part. */
export const kindNames = (): string[] => [...kinds.keys()];
