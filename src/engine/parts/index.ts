import type { PartKind, PartOptions } from '../model/part.ts';
import { actuator } from './actuator.ts';
import { automaticBypass } from './automatic-bypass.ts';
import { boiler } from './boiler.ts';
import { boilerSequencer } from './boiler-sequencer.ts';
import { boostSwitch } from './boost-switch.ts';
import { changeoverTwoPort } from './changeover-two-port.ts';
import { combinationBoiler } from './combination-boiler.ts';
import { contactor } from './contactor.ts';
import { energyCutOut } from './cut-out.ts';
import { diverterValve } from './diverter-valve.ts';
import { floorLoop } from './floor-loop.ts';
import { frostThermostat } from './frost-thermostat.ts';
import { gravityProgrammer } from './gravity-programmer.ts';
import { heatPump } from './heat-pump.ts';
import { highLimitThermostat } from './high-limit-thermostat.ts';
import { immersionHeater } from './immersion-heater.ts';
import { isolator } from './isolator.ts';
import { lowLossHeader } from './low-loss-header.ts';
import { midPositionValve } from './mid-position-valve.ts';
import { overrunBoiler } from './overrun-boiler.ts';
import { pipeThermostat } from './pipe-thermostat.ts';
import { cylinderCoil, radiators } from './pipework.ts';
import { programmableThermostat } from './programmable-thermostat.ts';
import { twoChannelProgrammer } from './programmer.ts';
import { pump } from './pump.ts';
import { relay } from './relay.ts';
import { simpleBoiler } from './simple-boiler.ts';
import { solarController } from './solar-controller.ts';
import { solarPumpStation } from './solar-pump-station.ts';
import { fusedSpurOf } from './spur.ts';
import { strip } from './strip.ts';
import { temperatureSensor } from './temperature-sensor.ts';
import { thermalStore } from './thermal-store.ts';
import { cylinderThermostat, roomThermostat } from './thermostats.ts';
import { timer } from './timer.ts';
import { twoChannelReceiver } from './two-channel-receiver.ts';
import { twoPortValve } from './two-port-valve.ts';
import { voltFreeBoiler } from './volt-free-boiler.ts';
import { wirelessReceiver } from './wireless-receiver.ts';
import { wiringCentre } from './wiring-centre.ts';
import { zonePump } from './zone-pump.ts';

type Maker = (options: PartOptions) => PartKind;
const fixed =
  (kind: PartKind): Maker =>
  () =>
    kind;

const kinds = new Map<string, Maker>([
  ...[
    twoChannelProgrammer,
    timer,
    twoChannelReceiver,
    roomThermostat,
    programmableThermostat,
    wirelessReceiver,
    frostThermostat,
    pipeThermostat,
    cylinderThermostat,
    energyCutOut,
    midPositionValve,
    twoPortValve,
    relay,
    boiler,
    cylinderCoil,
    radiators,
    actuator,
    boostSwitch,
    contactor,
    floorLoop,
    heatPump,
    highLimitThermostat,
    immersionHeater,
    isolator,
    solarController,
    solarPumpStation,
    temperatureSensor,
    gravityProgrammer,
    simpleBoiler,
    changeoverTwoPort,
    diverterValve,
    overrunBoiler,
    automaticBypass,
    combinationBoiler,
    voltFreeBoiler,
    zonePump,
    thermalStore,
    lowLossHeader,
    boilerSequencer,
  ].map((kind): [string, Maker] => [kind.kind, fixed(kind)]),
  ['fused-spur', fusedSpurOf],
  ['pump', pump],
  ['strip', strip],
  ['wiring-centre', wiringCentre],
]);

/** The kind of part with this name, or undefined. */
export const findKind = (kind: string, options: PartOptions): PartKind | undefined =>
  kinds.get(kind)?.(options);

/** Names of all kinds of part. */
export const kindNames = (): string[] => [...kinds.keys()];
