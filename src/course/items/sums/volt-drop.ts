import { milliohmsPerMetre } from '../../../engine/meter/conductors.ts';
import { DROP_LIMIT, flexDrop } from '../../../engine/meter/volt-drop.ts';
import { figure } from '../../../engine/model/figure.ts';
import { between, compare, type Sum, sayer, sayLines } from './kit.ts';

const VOLTS = sayer('V', 3);

/** Volts lost in a flex, out and back. */
export const voltDrop: Sum = {
  id: 'volt-drop',
  title: 'How many volts are lost in the flex?',
  make(random, level) {
    const mm2 = random.pick(level === 1 ? [0.75] : [0.5, 0.75, 1, 1.5]);
    const metres = between(random, 5, level === 3 ? 40 : 20, 1);
    const amps = random.pick(level === 1 ? [1, 2] : [0.5, 0.8, 1, 1.5, 2]);
    const each = milliohmsPerMetre('flex', mm2);
    const worked = flexDrop({ mm2, metres, amps }, false);
    const { value } = worked;
    const put = `2 × ${metres} × ${each} ÷ 1000`;
    const ohms = (2 * metres * each) / 1000;
    return {
      ask: `A flex of ${mm2} mm² runs ${metres} m to a load that takes ${amps} A. Each core has ${each} mΩ for each metre. How many volts are lost on the way out and back?`,
      unit: 'V',
      accepts: ['V', 'volts', 'volt'],
      value,
      tolerance: Math.max(0.006, value * 0.015),
      slips: [
        {
          value: value / 2,
          cause: `You took the ${metres} m one way. The current goes out by one core and back by the other: ${2 * metres} m of copper.`,
          consequence: `You would find half the loss, ${VOLTS(value / 2)}, and could let a flex pass that loses too much.`,
          look: `Follow the current round the whole loop: line out, neutral back.`,
        },
        {
          value: value * 1000,
          cause: `The ${each} are milliohms. Without dividing by 1000 you get millivolts: ${figure(value * 1000, 0)} mV.`,
          consequence: `Read as volts, ${figure(value * 1000, 0)} would be more than the supply has.`,
          look: `Divide ${each} by 1000 to have ohms for each metre.`,
        },
        {
          value: ohms,
          cause: `${figure(ohms, 3)} is the resistance out and back, in ohms. Times ${amps} A it gives volts.`,
          consequence: `A load that takes more than 1 A loses more than your ${figure(ohms, 3)} V.`,
          look: `Volts lost are current times resistance.`,
        },
        {
          value: (each * metres) / 1000,
          cause: `${figure((each * metres) / 1000, 3)} is the resistance of one core in ohms. The way back and the current of ${amps} A are missing.`,
          consequence: `You would judge the flex by a core of its two, and with no load on it.`,
          look: `Double it for the way back, then multiply by ${amps}.`,
        },
        {
          value: ohms / amps,
          cause: `You divided by the ${amps} A. Volts lost are current times resistance.`,
          consequence: `By that sum a heavier load would lose less: ${VOLTS(ohms / amps)}.`,
          look: `Let the current double in your mind. Must the loss rise or fall?`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, VOLTS)} ${put} = ${figure(ohms, 3)} Ω, times ${amps} A.`,
        consequence:
          given > DROP_LIMIT
            ? `At ${VOLTS(given)} you would refuse this flex, as more than ${DROP_LIMIT} V may not be lost. In truth it loses ${VOLTS(value)}.`
            : given < value
              ? `At ${VOLTS(given)} the flex seems better than it is: it loses ${VOLTS(value)}.`
              : `At ${VOLTS(given)} the flex seems worse than it is, and you might buy a thicker one for nothing.`,
        look: `Three steps: both ways, ${2 * metres} m; ohms, ${figure(ohms, 3)}; times ${amps} A. Which one differs in your ${VOLTS(given)}?`,
      }),
      hints: [
        'How many metres of copper does the current pass, out and back?',
        'Resistance is 2 × metres × mΩ for each metre ÷ 1000. Volts lost are current × resistance.',
        `The current passes ${2 * metres} m of copper.`,
      ],
      steps: [...sayLines(worked), `So ${VOLTS(value)} are lost.`],
    };
  },
};
