import { figure } from '../../../engine/model/figure.ts';
import { ATMOSPHERE } from '../../../engine/plant/expansion-vessel.ts';
import { cushionPressure } from '../../../engine/plant/gas-cushion.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const BAR = sayer('bar', 2);
/** Sealed primaries are relieved at 3 bar (BS 5449 and BS 7074 practice). */
const RELIEF = 3;

/** Pressure in a vessel once water has gone in (Boyle). */
export const gasPressure: Sum = {
  id: 'gas-pressure',
  title: 'How far does the pressure rise?',
  make(random, level) {
    const litres = random.pick(level === 1 ? [18] : [8, 12, 18, 24]);
    const charge = random.pick(level === 1 ? [1, 1.5] : [0.8, 1, 1.2, 1.5]);
    const taken = between(random, Math.ceil(litres / 4), Math.floor(litres / 2), 0.5);
    const worked = cushionPressure(charge, litres, taken);
    const { value } = worked;
    const left = litres - taken;
    const gauge = (charge * litres) / left;
    const put = `(${charge} + ${ATMOSPHERE}) × ${litres} ÷ ${figure(left, 1)} − ${ATMOSPHERE}`;
    return {
      ask: `A vessel of ${litres} litres is charged to ${charge} bar on the gauge, empty of water. Then ${taken} litres of water go in, at the same temperature. Air is ${ATMOSPHERE} bar. What does the gauge read?`,
      unit: 'bar',
      accepts: ['bar', 'bars', 'bar gauge', 'barg'],
      value,
      tolerance: Math.max(0.03, value * 0.01),
      slips: [
        {
          value: gauge,
          cause: `You put in ${charge} bar as the gauge shows it. The gas is at ${figure(charge + ATMOSPHERE, 3)} bar, with the air counted.`,
          consequence: `You expect ${BAR(gauge)}, and the gauge shows ${BAR(value)}: you would call a sound vessel faulty.`,
          look: `Add ${ATMOSPHERE} before you squeeze the gas, and take it off at the end.`,
        },
        {
          value: value + ATMOSPHERE,
          cause: `${BAR(value + ATMOSPHERE)} is the pressure with the air counted. A gauge shows ${ATMOSPHERE} bar less.`,
          consequence: `You would expect the relief valve of ${RELIEF} bar to open sooner than it does.`,
          look: `Take the air off again at the end.`,
        },
        {
          value: ((charge + ATMOSPHERE) * litres) / taken - ATMOSPHERE,
          cause: `You divided by the ${taken} L of water. What is squeezed is the gas, and it has ${figure(left, 1)} L left.`,
          consequence: `By that sum the pressure would fall as more water goes in.`,
          look: `How much room is left to the gas: ${litres} − ${taken}.`,
        },
        {
          value: charge,
          cause: `${BAR(charge)} was the charge with no water in. With ${taken} L in, the gas is squeezed into ${figure(left, 1)} L.`,
          consequence: `You would take the rise to ${BAR(value)} for a fault.`,
          look: `Compare the room of the gas before and after: ${litres} L and ${figure(left, 1)} L.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, BAR)} ${put}.`,
        consequence:
          given >= RELIEF !== value >= RELIEF
            ? `Your ${BAR(given)} is on the other side of ${RELIEF} bar, where the relief valve of a sealed system opens.`
            : `Someone who expects ${BAR(given)} and reads ${BAR(value)} goes looking for a fault.`,
        look: `Pressure with air before: ${figure(charge + ATMOSPHERE, 3)} bar. Room of the gas: from ${litres} to ${figure(left, 1)} L. Then the air off. Compare each with the way to your ${BAR(given)}.`,
      }),
      hints: [
        'How much room has the gas before, and how much after?',
        'Pressure times room stays the same, with the pressure of the air counted.',
        `After the water is in, the gas has ${figure(left, 1)} L.`,
      ],
      steps: [`Room left to the gas: ${litres} − ${taken} = ${figure(left, 1)} L.`, ...sayLines(worked)],
    };
  },
};
