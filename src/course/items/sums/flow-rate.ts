import { flowForPower } from '../../../engine/plant/coil-flow.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const FLOW = sayer('L/min', 1);
const HEAT = 4.186;

/** Water that must flow to carry a power. */
export const flowRate: Sum = {
  id: 'flow-rate',
  title: 'How much water must flow?',
  make(random, level) {
    const kilowatts = between(random, 10, level === 3 ? 35 : 28, 1);
    const drop = random.pick(level === 1 ? [20] : [5, 11, 20]);
    const worked = flowForPower(kilowatts, drop);
    const { value } = worked;
    const put = `${kilowatts} × 60 ÷ (${HEAT} × ${drop})`;
    return {
      ask: `A boiler gives ${kilowatts} kW. The water leaves it ${drop} K hotter than it comes back. A litre takes ${HEAT} kJ for each kelvin. How many litres must flow in a minute?`,
      unit: 'L/min',
      accepts: ['L/min', 'l/min', 'litres per minute', 'litres a minute', 'lpm', 'L', 'litres'],
      value,
      tolerance: Math.max(0.1, value * 0.01),
      slips: [
        {
          value: value / 60,
          cause: `That is the flow in a second. The question asks for a minute: 60 times as much.`,
          consequence: `A pump set for ${sayer('L/min', 2)(value / 60)} leaves the boiler to boil its own water.`,
          look: `kW are kilojoules in a second. Multiply by 60.`,
        },
        {
          value: (kilowatts * 60) / drop,
          cause: `You left out the ${HEAT} kJ that a litre takes for each kelvin.`,
          consequence: `You would look for a pump that moves ${FLOW((kilowatts * 60) / drop)}, four times what is needed.`,
          look: `Divide by ${HEAT} as well.`,
        },
        {
          value: (kilowatts * 60) / HEAT,
          cause: `You left out the drop of ${drop} K: that would be the flow at a drop of 1 K.`,
          consequence: `No house pump moves ${FLOW((kilowatts * 60) / HEAT)}.`,
          look: `Divide by the ${drop} K as well.`,
        },
        {
          value: (kilowatts * 60 * drop) / HEAT,
          cause: `You multiplied by the ${drop} K. A larger drop needs less water, so divide.`,
          consequence: `By that sum a colder return would ask for more flow: ${FLOW((kilowatts * 60 * drop) / HEAT)}.`,
          look: `Each litre carries more when it cools by more. Then how many are needed?`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, FLOW)} ${put}.`,
        consequence:
          given <= 0
            ? `With ${FLOW(given)} no heat leaves the boiler.`
            : `At ${FLOW(given)} the water would come back ${Math.round((kilowatts * 60) / (HEAT * given))} K colder, not ${drop} K.`,
        look: `Below the line: ${HEAT} × ${drop}. Above it: ${kilowatts} × 60. Which one is not in your ${FLOW(given)}?`,
      }),
      hints: [
        'How much heat does one litre carry when it cools by the drop?',
        'Flow is kW × 60 ÷ (4.186 × drop).',
        `In a minute the boiler gives ${kilowatts * 60} kJ.`,
      ],
      steps: [...sayLines(worked), `So ${FLOW(value)} must flow.`],
    };
  },
};
