import type { PlantSizes } from '../../plant/store.ts';

/** A stretch of every day, in hours from midnight: `[6, 8.5]` is 6 to half past 8. */
export type Span = readonly [from: number, to: number];

/** Hot water that is used every day: at an hour from midnight, so many litres out of the store. */
export interface DrawOff {
  readonly at: number;
  readonly litres: number;
}

/** What the day is like and how the controls are set. Temperatures in °C, times in hours unless named otherwise. */
export interface DaySettings extends PlantSizes {
  /** Length of the run, from midnight. */
  readonly hours: number;
  /** Store and flow at the start. */
  readonly startStore: number;
  readonly startFlow: number;
  /** Cylinder thermostat: opens at its setting, and calls again below that by its differential, K. */
  readonly thermostat: number;
  readonly differential: number;
  /** The cut-out trips here and stays tripped. */
  readonly cutOut: number;
  readonly boilerKilowatts: number;
  /** The boiler's own thermostat: the middle of a band in which its output falls to the least, then off. */
  readonly flow: number;
  readonly flowBand: number;
  /** Share of full output below which the burner can only go on and off. */
  readonly leastOutput: number;
  /** Whether the boiler's own thermostat sticks on with the other failures: then only its limit stops the burner. */
  readonly flowFails: boolean;
  readonly boilerLimit: number;
  /** Whether the limit locks out until it is reset by hand, or lets the boiler fire again by itself. */
  readonly limitResets: boolean;
  readonly drawLitresPerMinute: number;
  /** Seconds for a valve's whole travel: by its motor, and back by its spring. */
  readonly motorSeconds: number;
  readonly springSeconds: number;
  readonly hotWater: readonly Span[];
  readonly heating: readonly Span[];
  /** When the room thermostat calls: given, not worked out from the house. */
  readonly roomCalls: readonly Span[];
  readonly draws: readonly DrawOff[];
  /** When the failures strike. */
  readonly failAt: number;
}

/** A working day in a house with a 210 litre cylinder. */
export const ORDINARY_DAY: DaySettings = {
  hours: 24,
  litres: 210,
  startStore: 55,
  startFlow: 30,
  // Common practice: 60 to 65 °C, with a fixed differential of 6 to 10 K.
  thermostat: 60,
  differential: 8,
  // The trade's band is 80 to 85 °C (common practice, from memory); one textbook for apprentices gives 85 to 89 °C.
  // The low end is taken: a boiler at 82 °C cannot heat a store past its own flow, so a higher one would never trip.
  cutOut: 80,
  // A temperature relief valve begins to open at 90 °C and is wide open at 95 °C (textbook: 95; trade: 90 to 95).
  reliefOpens: 90,
  reliefWide: 95,
  // Approved Document G 3.37: it must pass at least the power that goes in. This is 56 kW above 10 °C water.
  reliefLitresPerMinute: 10,
  boilerKilowatts: 20,
  // The traditional setting of a boiler's thermostat (common practice, from memory).
  flow: 82,
  // Assumptions: the band, and a burner that can turn down to a fifth.
  flowBand: 6,
  leastOutput: 0.2,
  flowFails: false,
  // Overheat limit of a boiler: about 95 to 110 °C, reset by hand (common practice, from memory).
  boilerLimit: 100,
  limitResets: false,
  // Coils of 120 to 300 litre cylinders: 15 to 25 kW at 80 °C (common practice, from memory).
  coilKilowatts: 20,
  // Assumption: radiators that give 10 kW at an 82 °C flow into a 20 °C room.
  radiatorKilowatts: 10,
  radiatorFlow: 82,
  room: 20,
  // Assumptions: 30 litres of water, or iron that holds as much, in boiler and pipes; 5 W/K lost from them.
  primaryLitres: 30,
  primaryLoss: 5,
  cold: 10,
  // Assumption: a tap or shower.
  drawLitresPerMinute: 10,
  // Common practice: a motor takes 10 to 20 s, a spring 5 to 10 s.
  motorSeconds: 15,
  springSeconds: 7,
  hotWater: [
    [6, 9],
    [15, 21.5],
  ],
  heating: [
    [6, 9],
    [16, 22.5],
  ],
  roomCalls: [
    [6, 8.25],
    [8.6, 10],
    [15, 18.5],
    [19.25, 20],
    [20.75, 21.5],
    [22, 23],
  ],
  draws: [
    { at: 6.75, litres: 45 },
    { at: 7.5, litres: 45 },
    { at: 12.5, litres: 10 },
    { at: 18, litres: 20 },
    { at: 20, litres: 80 },
  ],
  failAt: 5,
};
