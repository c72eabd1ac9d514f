import { figure } from '../../../engine/model/figure.ts';
import { growth } from '../../../engine/plant/water.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const LITRES = sayer('L', 2);

/** Litres by which water grows when it is heated. */
export const expansion: Sum = {
  id: 'expansion',
  title: 'How much does the water grow?',
  make(random, level) {
    const litres = between(random, 90, 300, 10);
    const cold = level === 1 ? 10 : random.pick([5, 10, 15]);
    const hot = random.pick(level === 1 ? [60, 65] : [60, 65, 70, 80]);
    const worked = growth(cold, hot);
    const share = worked.value;
    const percent = `${figure(share * 100, 2)} %`;
    const value = share * litres;
    return {
      ask: `${litres} litres are heated from ${cold} to ${hot} °C. Water grows by ${percent} on the way. By how many litres does it grow?`,
      unit: 'L',
      accepts: ['L', 'l', 'litres', 'litre', 'liters', 'ltr'],
      value,
      tolerance: Math.max(0.03, value * 0.01),
      slips: [
        {
          value: share * 100 * litres,
          cause: `You took ${percent} as ${figure(share * 100, 2)} whole parts. A per cent is a hundredth: ${figure(share, 4)}.`,
          consequence: `${LITRES(share * 100 * litres)} is more than the cylinder holds. No vessel could take that up.`,
          look: `Divide the ${figure(share * 100, 2)} by 100 before you multiply by ${litres}.`,
        },
        {
          value: 0.04 * litres,
          cause: `You took 4 %. That is the growth from freezing to boiling, a round figure on the safe side. From ${cold} to ${hot} °C it is ${percent}.`,
          consequence: `You would choose a vessel for ${LITRES(0.04 * litres)}, ${figure(0.04 / share, 1)} times as much as this water grows.`,
          look: `Use the figure for the temperatures of this store, ${cold} and ${hot} °C.`,
        },
        {
          value: litres + value,
          cause: `${LITRES(litres + value)} is all the water once it is hot. The question asks only for what was added.`,
          consequence: `A vessel for ${LITRES(litres + value)} would be larger than the cylinder itself.`,
          look: `Take the ${litres} L that were there from the start off your figure.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, LITRES)} ${litres} × ${figure(share, 4)}.`,
        consequence:
          given < value
            ? `A vessel chosen for ${LITRES(given)} fills up before the water is hot, and the expansion valve drips.`
            : `A vessel chosen for ${LITRES(given)} is larger than this store needs.`,
        look: `Write ${percent} as ${figure(share, 4)}, then multiply by ${litres}. Your ${LITRES(given)} is ${figure((given / litres) * 100, 1)} % of the water.`,
      }),
      hints: [
        `How much does one litre grow from ${cold} to ${hot} °C?`,
        'Growth is a share of the cold water: the share times the litres.',
        `${percent} is ${figure(share, 4)} of each litre.`,
      ],
      steps: [
        ...sayLines(worked),
        `Growth in litres = litres × share = ${litres} × ${figure(share, 4)} = ${LITRES(value)}.`,
      ],
    };
  },
};
