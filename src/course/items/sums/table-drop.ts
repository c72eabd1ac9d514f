import { DROP_LIMIT, tableDrop } from '../../../engine/meter/volt-drop.ts';
import { figure } from '../../../engine/model/figure.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const VOLTS = sayer('V', 2);
/** mm² and mV for each amp and metre (BS 7671 Appendix 4, 70 °C thermoplastic copper, as publicly quoted). */
const ROWS = [
  [1, 44],
  [1.5, 29],
  [2.5, 18],
] as const;

/** Volts lost in a cable by the table of millivolts. */
export const tableDropSum: Sum = {
  id: 'table-drop',
  title: 'How many volts are lost in the cable?',
  make(random, level) {
    const [mm2, each] = random.pick(ROWS);
    const metres = between(random, 8, level === 3 ? 45 : 25, 1);
    const amps = random.pick(level === 1 ? [1, 3] : [0.5, 1, 3, 10, 13]);
    const worked = tableDrop({ mm2, metres, amps });
    const { value } = worked;
    const put = `${each} × ${metres} × ${amps} ÷ 1000`;
    return {
      ask: `A cable of ${mm2} mm² runs ${metres} m and carries ${amps} A. The table gives ${each} mV for each amp and metre. How many volts are lost?`,
      unit: 'V',
      accepts: ['V', 'volts', 'volt'],
      value,
      tolerance: Math.max(0.006, value * 0.01),
      slips: [
        {
          value: value * 2,
          cause: `You doubled the ${metres} m for the way back. The ${each} mV of the table hold both ways already.`,
          consequence: `You would find ${VOLTS(value * 2)} and pay for a thicker cable than the ${mm2} mm² that does.`,
          look: `What is the table’s figure for: a core, or the cable with both?`,
        },
        {
          value: value * 1000,
          cause: `${figure(value * 1000, 0)} is in millivolts. Divide by 1000 for volts.`,
          consequence: `No cable on 230 V can lose ${figure(value * 1000, 0)} V.`,
          look: `The m before the V in the ${each} mV of the table.`,
        },
        {
          value: (each * metres) / 1000,
          cause: `You left out the current. ${each} mV are lost for each amp, and there are ${amps}.`,
          consequence: `Any load would seem to lose the same ${VOLTS((each * metres) / 1000)}.`,
          look: `Multiply by the ${amps} A as well.`,
        },
        {
          value: (each * amps) / 1000,
          cause: `You left out the length. ${each} mV are lost in each metre, and there are ${metres}.`,
          consequence: `A cable to the far end of the house would seem to lose no more than one of a metre: ${VOLTS((each * amps) / 1000)}.`,
          look: `Multiply by the ${metres} m as well.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, VOLTS)} ${put}.`,
        consequence:
          given > DROP_LIMIT !== value > DROP_LIMIT
            ? `Your ${VOLTS(given)} falls on the other side of the ${DROP_LIMIT} V that may be lost: the cable would be judged the wrong way.`
            : `Your ${VOLTS(given)} falls on the same side of the ${DROP_LIMIT} V that may be lost, but it leaves the next run a wrong share.`,
        look: `Write the three numbers under each other: ${each}, ${metres}, ${amps}. Then divide by 1000 once. Where does ${VOLTS(given)} part from it?`,
      }),
      hints: [
        'The table counts both cores. What does it ask you to multiply by?',
        'Volts lost are mV × metres × amps ÷ 1000.',
        `In one metre, ${amps} A lose ${figure((each * amps) / 1000, 3)} V.`,
      ],
      steps: [...sayLines(worked), `So ${VOLTS(value)} are lost.`],
    };
  },
};
