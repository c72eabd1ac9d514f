import { type Conductor, milliohmsPerMetre } from '../../../engine/meter/conductors.ts';
import { loopResistance } from '../../../engine/meter/loop-resistance.ts';
import { figure } from '../../../engine/model/figure.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const OHMS = sayer('Ω', 3);
/** Line and earth of flexes and cables in use, mm². */
const PAIRS: Readonly<Record<Conductor, readonly (readonly [line: number, earth: number])[]>> = {
  flex: [
    [0.75, 0.75],
    [1, 1],
    [1.5, 1.5],
  ],
  cable: [
    [1.5, 1],
    [2.5, 1.5],
    [1, 1],
    [1.5, 1.5],
  ],
};

/** Line out and earth back: what a continuity test at the far end should read. */
export const r1PlusR2: Sum = {
  id: 'r1-plus-r2',
  title: 'What should R1 + R2 read?',
  make(random, level) {
    const kind = level === 1 ? 'cable' : random.pick(['cable', 'flex'] as const);
    const pairs = PAIRS[kind];
    const [line, earth] = random.pick(level === 1 ? pairs.slice(0, 2) : pairs);
    const metres = between(random, 6, level === 3 ? 45 : 25, 1);
    const worked = loopResistance({ kind, line, earth, metres });
    const { value } = worked;
    const [r1, r2] = [milliohmsPerMetre(kind, line), milliohmsPerMetre(kind, earth)];
    const put = `(${r1} + ${r2}) × ${metres} ÷ 1000`;
    return {
      ask: `A ${kind} runs ${metres} m. Its line has ${line} mm² and ${r1} mΩ for each metre, its earth ${earth} mm² and ${r2} mΩ. Line and earth are joined at the far end. What should R1 + R2 read?`,
      unit: 'Ω',
      accepts: ['Ω', 'ohm', 'ohms', 'R', 'Ohm', 'Ohms'],
      value,
      tolerance: Math.max(0.006, value * 0.015),
      slips: [
        {
          value: (r1 * metres) / 1000,
          cause: `${OHMS((r1 * metres) / 1000)} is the line alone. A fault current comes back by the earth, and its ${OHMS((r2 * metres) / 1000)} count as well.`,
          consequence: `A sound run that reads ${OHMS(value)} would seem to have a bad joint.`,
          look: `Follow the current: out by line, back by earth. Add ${r1} and ${r2}.`,
        },
        {
          value: value * 1000,
          cause: `${figure(value * 1000, 0)} is in milliohms. Divide by 1000 for ohms.`,
          consequence: `A run with ${figure(value * 1000, 0)} Ω would never blow a fuse.`,
          look: `The m before the Ω in ${r1} mΩ.`,
        },
        ...(r1 === r2
          ? []
          : [
              {
                value: (2 * r1 * metres) / 1000,
                cause: `You took the earth as thick as the line, ${line} mm². It has ${earth} mm² and ${r2} mΩ for each metre.`,
                consequence: `You would expect ${OHMS((2 * r1 * metres) / 1000)} and suspect a joint when the tester shows more.`,
                look: `Look at both figures: ${r1} for line, ${r2} for earth.`,
              },
            ]),
        {
          value: value * 2,
          cause: `You doubled it. One core goes out and the other comes back, and both are in ${put} already.`,
          consequence: `You would expect ${OHMS(value * 2)}, and a joint that doubles the reading would pass.`,
          look: `Count the cores on the way: line once, earth once.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, OHMS)} ${put}.`,
        consequence:
          given > value
            ? `Expecting ${OHMS(given)}, you would pass a joint that adds ${OHMS(given - value)}.`
            : `Expecting ${OHMS(given)}, you would search a sound run for a bad joint.`,
        look: `One metre there and back is ${figure(r1 + r2, 2)} mΩ. Times ${metres}, then ÷ 1000. Compare with your ${OHMS(given)}.`,
      }),
      hints: [
        'Which two cores does the test current pass?',
        'Add the milliohms of both cores for each metre, times the metres, divided by 1000.',
        `One metre of both is ${figure(r1 + r2, 2)} mΩ.`,
      ],
      steps: [...sayLines(worked), `So the tester should read about ${OHMS(value)}.`],
    };
  },
};
