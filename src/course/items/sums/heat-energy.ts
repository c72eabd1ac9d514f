import { heatUpEnergyByRule, KWH_PER_LITRE_KELVIN } from '../../../engine/plant/reheat.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const KWH = sayer('kWh', 2);

/** Energy to heat a store, by the trade’s constant. */
export const heatEnergy: Sum = {
  id: 'heat-energy',
  title: 'How much energy does it take?',
  make(random, level) {
    const litres = between(random, 100, level === 3 ? 500 : 300, 10);
    const from = level === 1 ? 10 : random.pick([5, 8, 10, 12, 15]);
    const to = random.pick([50, 55, 60, 65]);
    const rise = to - from;
    const worked = heatUpEnergyByRule({ litres, from, to });
    const { value } = worked;
    const each = KWH_PER_LITRE_KELVIN;
    return {
      ask: `A store of ${litres} litres is heated from ${from} to ${to} °C. One litre needs ${each} kWh for each kelvin. How much energy does it take?`,
      unit: 'kWh',
      accepts: ['kWh', 'kwh', 'kilowatt hours', 'units'],
      value,
      tolerance: Math.max(0.05, value * 0.01),
      slips: [
        {
          value: each * litres * to,
          cause: `You multiplied by ${to}, the temperature it ends at. The water starts at ${from} °C, so it rises by ${rise} K.`,
          consequence: `You would allow ${KWH(each * litres * to)} and find the store hot long before.`,
          look: `Take the cold temperature off the hot one: ${to} − ${from}.`,
        },
        {
          value: each * litres * from,
          cause: `You multiplied by ${from}, the temperature it starts at. What counts is the rise, ${rise} K.`,
          consequence: `${KWH(each * litres * from)} would leave the store far from ${to} °C.`,
          look: `How many kelvin lie between ${from} and ${to} °C?`,
        },
        {
          value: each * litres * (to + from),
          cause: `You added the two temperatures. The water only climbs from ${from} to ${to} °C.`,
          consequence: `You would ask for ${KWH(each * litres * (to + from))}, more than twice the climb from freezing.`,
          look: `Subtract: ${to} − ${from} is ${rise} K.`,
        },
        {
          value: value * 3600,
          cause: `${compare(value * 3600, value, KWH)} That is the figure in kilojoules: 3600 of them make one kWh.`,
          consequence: `A bill or a heat input worked out from that would be 3600 times too high.`,
          look: `Which unit does the ${each} carry? kWh already.`,
        },
        {
          value: each * rise,
          cause: `You worked out one litre: ${each} × ${rise}. There are ${litres}.`,
          consequence: `That would warm a single litre, and not the ${litres} L of the store.`,
          look: `Multiply by the litres as well: ${litres}.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, KWH)} ${each} × ${litres} × ${rise}.`,
        consequence:
          given < value
            ? `With ${KWH(given)} the store would stop at about ${Math.round(from + given / (each * litres))} °C.`
            : `With ${KWH(given)} you would plan for more heat, or more time, than ${litres} L need.`,
        look: `Check the rise, ${rise} K, then the litres, ${litres}. One of them is not in your ${KWH(given)} as it should be.`,
      }),
      hints: [
        `By how many kelvin is the water warmed?`,
        'Energy is the constant times the litres times the rise.',
        `The rise is ${to} − ${from} = ${rise} K.`,
      ],
      steps: [`The water rises by ${to} − ${from} = ${rise} K.`, ...sayLines(worked)],
    };
  },
};
