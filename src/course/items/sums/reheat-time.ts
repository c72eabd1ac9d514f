import { figure } from '../../../engine/model/figure.ts';
import { heatUpEnergyByRule, heatUpTime, KWH_PER_LITRE_KELVIN } from '../../../engine/plant/reheat.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const MINUTES = sayer('min', 1);

/** Minutes to heat a store with a given heat input, without losses. */
export const reheatTime: Sum = {
  id: 'reheat-time',
  title: 'How long does it take to heat?',
  make(random, level) {
    const litres = between(random, 100, 300, 10);
    const from = level === 1 ? 10 : random.pick([5, 10, 15, 40]);
    const to = random.pick([60, 65]);
    const rise = to - from;
    const kilowatts = random.pick(level === 1 ? [3, 20] : [3, 6, 12, 15, 18, 20, 24]);
    const heating = { litres, from, to };
    const energy = heatUpEnergyByRule(heating).value;
    const worked = heatUpTime(heating, kilowatts, heatUpEnergyByRule);
    const { value } = worked;
    const kwh = `${figure(energy, 2)} kWh`;
    const constant = KWH_PER_LITRE_KELVIN;
    return {
      ask: `A store of ${litres} litres is heated from ${from} to ${to} °C by ${kilowatts} kW. One litre needs ${constant} kWh for each kelvin, and no heat is lost. How many minutes does it take?`,
      unit: 'min',
      accepts: ['min', 'mins', 'minutes', 'minute'],
      value,
      tolerance: Math.max(0.5, value * 0.01),
      slips: [
        {
          value: value / 60,
          cause: `${figure(value / 60, 2)} is the time in hours: ${kwh} ÷ ${kilowatts} kW. The question asks for minutes.`,
          consequence: `Somebody told “${figure(value / 60, 2)} minutes” finds the water cold when they turn on the tap.`,
          look: `Multiply the hours by 60.`,
        },
        {
          value: energy * kilowatts * 60,
          cause: `You multiplied by the ${kilowatts} kW. More power makes it quicker, so divide.`,
          consequence: `By that sum a larger heater would take longer: ${MINUTES(energy * kilowatts * 60)}.`,
          look: `${kwh} shared out at ${kilowatts} kW each hour: which way round is the division?`,
        },
        {
          value: (constant * litres * to * 60) / kilowatts,
          cause: `You took ${to} K of rise. The water starts at ${from} °C, so it rises by ${rise} K.`,
          consequence: `You would say ${MINUTES((constant * litres * to * 60) / kilowatts)}, and the thermostat would be satisfied before.`,
          look: `Subtract the cold temperature: ${to} − ${from}.`,
        },
        {
          value: energy * 60,
          cause: `${figure(energy * 60, 1)} is 60 times the energy. The heat input, ${kilowatts} kW, is not in it.`,
          consequence: `It would be the time for a heater of just 1 kW.`,
          look: `Divide by the ${kilowatts} kW.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, MINUTES)} ${kwh} × 60 ÷ ${kilowatts}.`,
        consequence:
          given < value
            ? `After ${MINUTES(given)} the store would be at about ${Math.round(from + (rise * given) / value)} °C, and called hot.`
            : `You would set the programmer for ${MINUTES(given)}, though the thermostat is satisfied after ${MINUTES(value)}.`,
        look: `First the energy: is yours ${kwh}? Then the time: does your ${MINUTES(given)} come from it?`,
      }),
      hints: [
        'Work out the energy first, then how long the heat input takes to bring it.',
        'Energy is the constant × litres × rise. Time in hours is energy ÷ kW.',
        `The energy is ${kwh}.`,
      ],
      steps: [...sayLines(worked), `So it takes ${MINUTES(value)}.`],
    };
  },
};
