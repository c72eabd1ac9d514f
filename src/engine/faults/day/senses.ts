import type { InputBits, System } from '../../model/system.ts';
import { energyCutOut } from '../../parts/cut-out.ts';
import { twoChannelProgrammer } from '../../parts/programmer.ts';
import { cylinderThermostat, roomThermostat } from '../../parts/thermostats.ts';

/** What the day knows, and the inputs of a system follow. */
export type Sense = 'supply' | 'hotWater' | 'heating' | 'room' | 'store' | 'cutOut';

/** The inputs that follow each sense, as bits: those of every part of the kind that has it. */
export type Senses = Readonly<Record<Sense, InputBits>>;

export function sensesOf(system: System): Senses {
  const bits = (kind: string, slot: string): InputBits =>
    system.parts.reduce((sum, part) => {
      const input = part.kind.kind === kind ? part.slots[slot] : undefined;
      return input === undefined ? sum : sum | (1 << input);
    }, 0);
  return {
    supply: system.supply.input < 0 ? 0 : 1 << system.supply.input,
    hotWater: bits(twoChannelProgrammer.kind, 'hot-water'),
    heating: bits(twoChannelProgrammer.kind, 'heating'),
    room: bits(roomThermostat.kind, 'call'),
    store: bits(cylinderThermostat.kind, 'call'),
    cutOut: bits(energyCutOut.kind, 'trip'),
  };
}

/** Settings as bits from what is true now. Inputs that follow nothing known stay at rest. */
export const inputsFor = (senses: Senses, now: Readonly<Record<Sense, boolean>>): InputBits =>
  (now.supply ? senses.supply : 0) |
  (now.hotWater ? senses.hotWater : 0) |
  (now.heating ? senses.heating : 0) |
  (now.room ? senses.room : 0) |
  (now.store ? senses.store : 0) |
  (now.cutOut ? senses.cutOut : 0);
