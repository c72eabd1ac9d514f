import { heatLossCoefficient } from './cool-down.ts';
import { KWH_PER_LITRE_KELVIN } from './reheat.ts';
import { standingLossLimit } from './standing-loss.ts';

/** J to warm a litre of water by a kelvin: the trade's constant, within 0.1 % of IAPWS-95 from 10 to 60 °C. */
const JOULES_PER_LITRE_KELVIN = KWH_PER_LITRE_KELVIN * 3.6e6;

/** Sizes and settings that a plant is made from. Litres, kW, °C, litres a minute. */
export interface PlantSizes {
  readonly litres: number;
  readonly coilKilowatts: number;
  readonly radiatorKilowatts: number;
  /** Flow temperature at which the radiators give their rating. */
  readonly radiatorFlow: number;
  /** Boiler body and the water in it and its pipes, as litres of water. */
  readonly primaryLitres: number;
  /** Heat that boiler and pipes lose for each kelvin above the room, W/K. */
  readonly primaryLoss: number;
  readonly room: number;
  readonly cold: number;
  readonly reliefOpens: number;
  readonly reliefWide: number;
  readonly reliefLitresPerMinute: number;
}

/**
 * A boiler's water, a store and radiators as lumps: the store is mixed, boiler and pipes are one temperature (the
 * flow), the radiators are a heat sink without water of their own. Heat capacities in J/K, the rest in W/K, °C, litre/s.
 */
export interface Plant {
  readonly store: number;
  readonly primary: number;
  readonly coil: number;
  readonly radiators: number;
  readonly storeLoss: number;
  readonly primaryLoss: number;
  readonly room: number;
  readonly cold: number;
  readonly relief: { readonly opens: number; readonly wide: number; readonly flow: number };
}

/**
 * Heat that a coil passes for each kelvin between flow and store, W/K. The rating is taken as the mean while a mixed
 * store is heated from 10 to 60 °C by a steady 80 °C flow: how such ratings are tested (BS EN 12897, from memory).
 * @param kilowatts the coil's rating
 */
export const coilConductance = (kilowatts: number): number =>
  (kilowatts * 1000 * Math.log((80 - 10) / (80 - 60))) / (60 - 10);

/**
 * A plant from its sizes. The store loses as much as Approved Document L allows for its size.
 * @throws RangeError for a store outside 15 to 2000 litres
 */
export function makePlant(sizes: PlantSizes): Plant {
  const { litres, room, cold } = sizes;
  return {
    store: litres * JOULES_PER_LITRE_KELVIN,
    primary: sizes.primaryLitres * JOULES_PER_LITRE_KELVIN,
    coil: coilConductance(sizes.coilKilowatts),
    radiators: (sizes.radiatorKilowatts * 1000) / (sizes.radiatorFlow - room),
    storeLoss: heatLossCoefficient(standingLossLimit(litres).value).value,
    primaryLoss: sizes.primaryLoss,
    room,
    cold,
    relief: {
      opens: sizes.reliefOpens,
      wide: sizes.reliefWide,
      flow: sizes.reliefLitresPerMinute / 60,
    },
  };
}

/** What the controls do to the plant, steady for a step: W, shares of full flow from 0 to 1, litre/s. */
export interface PlantDuty {
  readonly burner: number;
  readonly coil: number;
  readonly radiators: number;
  readonly drawn: number;
}

const ways = ['boiler', 'coil', 'radiators', 'primaryLoss', 'storeLoss', 'drawn', 'relieved'] as const;
/** The ways heat goes: into the primary water, through the coil into the store, and out. */
export type HeatWay = (typeof ways)[number];

/** Temperatures, °C, and the heat that has gone each way so far, J, in the order of `ways`. Changed by every step. */
export interface PlantState {
  store: number;
  /** The flow from the boiler. */
  primary: number;
  readonly joules: Float64Array;
}

export const startPlant = (store: number, primary: number): PlantState => ({
  store,
  primary,
  joules: new Float64Array(ways.length),
});

/** The heat that has gone each way so far, J. */
export const heatGone = ({ joules }: PlantState): Record<HeatWay, number> =>
  Object.fromEntries(ways.map((way, k) => [way, joules[k]])) as Record<HeatWay, number>;

/** Water that the relief valve passes, litre/s: nothing up to its set temperature, then in proportion until wide open. */
export const reliefFlow = ({ relief }: Plant, store: number): number =>
  relief.flow * Math.min(1, Math.max(0, (store - relief.opens) / (relief.wide - relief.opens)));

/** Heat each way at these temperatures, W, in the order of `ways`. */
function flows(plant: Plant, duty: PlantDuty, store: number, primary: number, watts: Float64Array): void {
  const { room, cold } = plant;
  const overCold = JOULES_PER_LITRE_KELVIN * (store - cold);
  watts[0] = duty.burner;
  watts[1] = duty.coil * plant.coil * (primary - store);
  watts[2] = duty.radiators * plant.radiators * (primary - room);
  watts[3] = plant.primaryLoss * (primary - room);
  watts[4] = plant.storeLoss * (store - room);
  watts[5] = duty.drawn * overCold;
  watts[6] = reliefFlow(plant, store) * overCold;
}

const intoPrimary = (w: Float64Array): number => w[0]! - w[1]! - w[2]! - w[3]!;
const intoStore = (w: Float64Array): number => w[1]! - w[4]! - w[5]! - w[6]!;

/** Heat each way at the four points of a step, W. */
const room = () => new Float64Array(ways.length);
const [first, second, third, fourth] = [room(), room(), room(), room()];

/**
 * Takes the plant on by a step: fourth-order Runge-Kutta. The same weights add up the heat, so the energy balance
 * closes whatever the step.
 * @param seconds length of the step; up to 10 s is well inside what is stable for a house
 */
export function stepPlant(plant: Plant, duty: PlantDuty, state: PlantState, seconds: number): void {
  const { store, primary, joules } = state;
  const perStore = seconds / plant.store;
  const perPrimary = seconds / plant.primary;
  flows(plant, duty, store, primary, first);
  flows(
    plant,
    duty,
    store + (perStore * intoStore(first)) / 2,
    primary + (perPrimary * intoPrimary(first)) / 2,
    second,
  );
  flows(
    plant,
    duty,
    store + (perStore * intoStore(second)) / 2,
    primary + (perPrimary * intoPrimary(second)) / 2,
    third,
  );
  flows(plant, duty, store + perStore * intoStore(third), primary + perPrimary * intoPrimary(third), fourth);
  for (let k = 0; k < first.length; k++) {
    first[k] = (first[k]! + 2 * second[k]! + 2 * third[k]! + fourth[k]!) / 6;
    joules[k]! += first[k]! * seconds;
  }
  state.store = store + perStore * intoStore(first);
  state.primary = primary + perPrimary * intoPrimary(first);
}

/** Heat held above 0 °C, J. */
export const storedHeat = (plant: Plant, { store, primary }: PlantState): number =>
  plant.store * store + plant.primary * primary;
