import { figure } from '../../../engine/model/figure.ts';
import { ATMOSPHERE, expansionVessel } from '../../../engine/plant/expansion-vessel.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const LITRES = sayer('L', 1);

/** The least expansion vessel of a store, with its charge set to the cold pressure. */
export const vessel: Sum = {
  id: 'vessel',
  title: 'How large must the expansion vessel be?',
  make(random, level) {
    const litres = between(random, 120, 300, 30);
    const [cold, hot] =
      level === 1
        ? [3, 5.5]
        : random.pick([
            [3, 5.5],
            [3.5, 5.5],
            [3, 6],
            [2.5, 5],
          ] as const);
    // From 10 to 60 and to 65 °C: see the fact of the growth of water.
    const share = random.pick(level === 1 ? [0.0195] : [0.0168, 0.0195, 0.0224]);
    const duty = { litres, growth: share, charge: cold, cold, hot };
    const worked = expansionVessel(duty);
    const { least: value, expansion } = worked.value;
    const gauge = expansion / (1 - cold / hot);
    const fills = 1 - (cold + ATMOSPHERE) / (hot + ATMOSPHERE);
    const given = `cold ${cold} bar, hot at most ${hot} bar`;
    return {
      ask: `A store of ${litres} litres grows by ${figure(share * 100, 2)} %. The vessel’s charge and the cold pressure are ${cold} bar, the highest pressure allowed hot is ${hot} bar, all as a gauge shows them. Air is ${ATMOSPHERE} bar. What is the least size of the vessel?`,
      unit: 'L',
      accepts: ['L', 'l', 'litres', 'litre', 'liters', 'ltr'],
      value,
      tolerance: Math.max(0.15, value * 0.015),
      slips: [
        {
          value: gauge,
          cause: `You put in ${cold} and ${hot} bar as the gauge shows them. Gas is squeezed by the air as well: add ${ATMOSPHERE} bar to each.`,
          consequence: `A vessel of ${LITRES(gauge)} is too small. It is full before the store is hot, and the expansion valve drips at every reheat.`,
          look: `Look at the pressures in your sum: ${figure(cold + ATMOSPHERE, 3)} and ${figure(hot + ATMOSPHERE, 3)} bar belong there.`,
        },
        {
          value: expansion,
          cause: `${LITRES(expansion)} is what the water grows by. A vessel can fill only in part, because the gas stays in it: here ${figure(fills * 100, 0)} %.`,
          consequence: `In a vessel of ${LITRES(expansion)} the gas would have no room left, and the pressure would open the expansion valve.`,
          look: `Find the share that can fill: 1 − cold ÷ hot, absolute. Then divide ${LITRES(expansion)} by it.`,
        },
        {
          value: expansion * fills,
          cause: `You multiplied by the share of the vessel that fills. The water must fit into that share, so divide: ${LITRES(expansion)} ÷ ${figure(fills, 3)}.`,
          consequence: `A vessel of ${LITRES(expansion * fills)} is smaller than the water that has to go into it.`,
          look: `Ask whether ${LITRES(expansion * fills)} can take up ${LITRES(expansion)}.`,
        },
        {
          value: (share * 100 * litres) / fills,
          cause: `You took ${figure(share * 100, 2)} % as ${figure(share * 100, 2)} whole parts. It is ${figure(share, 4)} of each litre.`,
          consequence: `A vessel of ${LITRES((share * 100 * litres) / fills)} is many times the size of the store.`,
          look: `The growth in litres: ${litres} × ${figure(share, 4)}, which is ${LITRES(expansion)}.`,
        },
      ],
      wrong: (typed) => ({
        cause: `${compare(typed, value, LITRES)} ${LITRES(expansion)} ÷ ${figure(fills, 3)}, with ${given} and the air added.`,
        consequence:
          typed < value
            ? `In ${LITRES(typed)} the pressure passes ${hot} bar before the store is hot, and the expansion valve lets water go.`
            : `${LITRES(typed)} would work, but it is a larger vessel than this store needs.`,
        look: `Go through it in three lines: growth ${LITRES(expansion)}, share that fills ${figure(fills, 3)}, then the one divided by the other. Which gives your ${LITRES(typed)}?`,
      }),
      hints: [
        'Two things decide: how much the water grows, and how much of the vessel can fill.',
        `The share that can fill is 1 − cold ÷ hot, with the air’s ${ATMOSPHERE} bar added to both.`,
        `The water grows by ${LITRES(expansion)}.`,
      ],
      steps: [...sayLines(worked), `So the least vessel is ${LITRES(value)}.`],
    };
  },
};
