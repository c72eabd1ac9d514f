import { milliohmsPerMetre } from '../../../engine/meter/conductors.ts';
import { faultLoop } from '../../../engine/meter/loop-resistance.ts';
import { figure } from '../../../engine/model/figure.ts';
import { between, compare, type Sum, sayer } from './kit.ts';

const OHMS = sayer('Ω', 2);
const FUSE = 3;

/** Earth fault loop impedance at the far end of a flex behind a 3 A spur. */
export const loopResistanceSum: Sum = {
  id: 'loop-resistance',
  title: 'What is the loop impedance at the far end?',
  make(random, level) {
    const mm2 = random.pick(level === 1 ? [0.75] : [0.75, 1, 1.5]);
    const metres = between(random, 5, level === 3 ? 40 : 20, 1);
    const external = between(random, 0.4, 1.6, 0.05);
    const run = { kind: 'flex', line: mm2, earth: mm2, metres } as const;
    const { zs: value, r1r2, limit } = faultLoop(run, external, FUSE).value;
    const each = milliohmsPerMetre('flex', mm2);
    const put = `${external} + 2 × ${each} × ${metres} ÷ 1000`;
    return {
      ask: `At the spur the earth fault loop reads ${external} Ω. From there ${metres} m of ${mm2} mm² flex go to a valve: line and earth have ${each} mΩ for each metre, each of them. What is the loop at the valve?`,
      unit: 'Ω',
      accepts: ['Ω', 'ohm', 'ohms', 'R', 'Ohm', 'Ohms'],
      value,
      tolerance: Math.max(0.011, value * 0.01),
      slips: [
        {
          value: r1r2,
          cause: `${OHMS(r1r2)} is the flex alone. The fault current also goes through the ${external} Ω before the spur.`,
          consequence: `You would write down a loop that is ${external} Ω better than the valve has.`,
          look: `Follow the whole loop, back to the transformer: add the reading at the spur.`,
        },
        {
          value: external + r1r2 / 2,
          cause: `You counted one core of the flex. The current comes by line and goes back by earth: ${OHMS(r1r2)} in all.`,
          consequence: `You would find ${OHMS(external + r1r2 / 2)}, less than the fuse really has to deal with.`,
          look: `Line and earth, ${metres} m each: twice ${each} mΩ.`,
        },
        {
          value: external,
          cause: `${external} Ω is the reading at the spur. The ${metres} m of flex add to it.`,
          consequence: `A long flex would seem as safe as none.`,
          look: `What lies between the spur and the valve? Add ${OHMS(r1r2)}.`,
        },
        {
          value: external + r1r2 * 1000,
          cause: `You added ${figure(r1r2 * 1000, 0)} milliohms as if they were ohms.`,
          consequence: `At ${OHMS(external + r1r2 * 1000)} no fuse would open, and you would condemn a sound flex.`,
          look: `Divide the milliohms by 1000 before you add them to ${external} Ω.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, OHMS)} ${put}.`,
        consequence:
          given > limit
            ? `At ${OHMS(given)} a ${FUSE} A fuse could not open in time, as ${OHMS(limit)} is the most. You would refuse a sound run.`
            : `At ${OHMS(given)} the ${FUSE} A fuse still opens in time, but the figure on the record would not be that of this valve.`,
        look: `Two parts: ${external} Ω up to the spur, ${OHMS(r1r2)} of flex. Which of them is not in your ${OHMS(given)} as it should be?`,
      }),
      hints: [
        'The loop at the far end has two parts: what stands before the spur, and the flex.',
        'Add R1 + R2 of the flex to the reading at the spur.',
        `R1 + R2 of the flex is ${OHMS(r1r2)}.`,
      ],
      steps: [
        `R1 + R2 = 2 × ${each} × ${metres} ÷ 1000 = ${OHMS(r1r2)}.`,
        `Loop at the valve = ${external} + ${figure(r1r2, 2)} = ${OHMS(value)}.`,
      ],
    };
  },
};
