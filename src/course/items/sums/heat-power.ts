import { figure } from '../../../engine/model/figure.ts';
import { heatUpEnergyByRule, heatUpPower, KWH_PER_LITRE_KELVIN } from '../../../engine/plant/reheat.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const KW = sayer('kW', 1);

/** Heat input that warms a store in the time given. */
export const heatPower: Sum = {
  id: 'heat-power',
  title: 'How many kilowatts does it take?',
  make(random, level) {
    const litres = between(random, 120, level === 3 ? 1000 : 300, 20);
    const from = level === 1 ? 10 : random.pick([5, 10, 12]);
    const to = random.pick([60, 65]);
    const minutes = random.pick([20, 25, 30, 40, 45, 90]);
    const heating = { litres, from, to };
    const energy = heatUpEnergyByRule(heating).value;
    const worked = heatUpPower(heating, minutes, heatUpEnergyByRule);
    const { value } = worked;
    const kwh = `${figure(energy, 2)} kWh`;
    return {
      ask: `A store of ${litres} litres is to be heated from ${from} to ${to} °C in ${minutes} minutes. One litre needs ${KWH_PER_LITRE_KELVIN} kWh for each kelvin. What heat input does it take?`,
      unit: 'kW',
      accepts: ['kW', 'kw', 'kilowatts', 'kilowatt'],
      value,
      tolerance: Math.max(0.1, value * 0.01),
      slips: [
        {
          value: energy / minutes,
          cause: `You divided ${kwh} by ${minutes} as if they were hours. ${minutes} minutes are ${figure(minutes / 60, 2)} h.`,
          consequence: `A heater of ${sayer('kW', 2)(energy / minutes)} would take ${minutes} hours, not minutes.`,
          look: `Turn the ${minutes} minutes into hours: divide by 60.`,
        },
        {
          value: energy,
          cause: `${figure(energy, 1)} is the energy in kWh. Brought in one hour it would take that many kW; here it must come in ${minutes} minutes.`,
          consequence: `With ${KW(energy)} it takes an hour.`,
          look: `Divide the energy by the time in hours, ${figure(minutes / 60, 2)}.`,
        },
        {
          value: (energy * minutes) / 60,
          cause: `You multiplied ${kwh} by the time. Less time needs more power, so divide by it.`,
          consequence: `By that sum a longer wait would need a larger boiler: ${KW((energy * minutes) / 60)}.`,
          look: `${kwh} in ${figure(minutes / 60, 2)} h: which way round is the division?`,
        },
        {
          value: (KWH_PER_LITRE_KELVIN * litres * to * 60) / minutes,
          cause: `You took ${to} K of rise. From ${from} °C it is ${to - from} K.`,
          consequence: `You would choose ${KW((KWH_PER_LITRE_KELVIN * litres * to * 60) / minutes)}, more coil and boiler than the job needs.`,
          look: `Subtract: ${to} − ${from}.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, KW)} ${kwh} × 60 ÷ ${minutes}.`,
        consequence:
          given > 0
            ? `With ${KW(given)} this store takes ${figure((energy * 60) / given, 0)} minutes, not ${minutes}.`
            : `With ${KW(given)} this store never gets warm.`,
        look: `First the energy: is yours ${kwh}? Then divide by ${figure(minutes / 60, 2)} h. Your ${KW(given)} parts from that somewhere.`,
      }),
      hints: [
        'Energy first, then the power that brings it in the time.',
        'Power in kW is energy in kWh divided by the time in hours.',
        `The energy is ${kwh}.`,
      ],
      steps: [...sayLines(worked), `So it takes ${KW(value)}.`],
    };
  },
};
