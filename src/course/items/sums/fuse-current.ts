import { controlSum, SPUR_FUSE } from '../../../engine/meter/fuse-sum.ts';
import { figure } from '../../../engine/model/figure.ts';
import { between, compare, type Sum, sayer } from './kit.ts';

const AMPS = sayer('A', 2);
const VOLTS = 230;

/** Current of all controls behind one fused spur. */
export const fuseCurrent: Sum = {
  id: 'fuse-current',
  title: 'What current do the controls take?',
  make(random, level) {
    const boiler = between(random, 90, 160, 5);
    const pump = between(random, 35, 100, 5);
    const valves = level === 1 ? 2 : between(random, 2, level === 3 ? 5 : 3, 1);
    const motor = random.pick([5, 6, 7]);
    const programmer = between(random, 3, 8, 1);
    const loads = [
      { name: 'Boiler', watts: boiler },
      { name: 'Pump', watts: pump, throughEndSwitch: true },
      { name: 'Valves', watts: motor, count: valves },
      { name: 'Programmer', watts: programmer },
    ];
    const worked = controlSum(loads, 3);
    const { watts, amps: value } = worked.value;
    const short = watts - motor * (valves - 1);
    const put = `${boiler} + ${pump} + ${valves} × ${motor} + ${programmer}`;
    return {
      ask: `Behind one spur: a boiler of ${boiler} W, a pump of ${pump} W, ${valves} valves of ${motor} W each and a programmer of ${programmer} W. The supply is ${VOLTS} V. What current do they take together?`,
      unit: 'A',
      accepts: ['A', 'amps', 'amp', 'amperes'],
      value,
      tolerance: 0.015,
      slips: [
        {
          value: short / VOLTS,
          cause: `You counted one valve of ${motor} W. There are ${valves}.`,
          consequence: `Here it is a small slip. With more of them, or larger loads, a fuse chosen for ${AMPS(short / VOLTS)} is too small.`,
          look: `Multiply the ${motor} W by ${valves} before you add.`,
        },
        {
          value: watts,
          cause: `${figure(watts)} is the power in watts. Divide by ${VOLTS} V for the current.`,
          consequence: `No fuse at a spur carries ${figure(watts)} A: that is more than a whole house takes.`,
          look: `Which unit comes out when you add up watts?`,
        },
        {
          value: VOLTS / watts,
          cause: `You divided the volts by the watts. Current is watts ÷ volts: ${figure(watts)} ÷ ${VOLTS}.`,
          consequence: `By that sum more loads would take less current: ${AMPS(VOLTS / watts)}.`,
          look: `Add another pump in your mind. Must the current rise or fall?`,
        },
        {
          value: value * 1000,
          cause: `${figure(value * 1000, 0)} is the current in milliamps. 1000 of them are one amp.`,
          consequence: `Read as amps, ${figure(value * 1000, 0)} would melt the whole spur.`,
          look: `The unit behind the box: A.`,
        },
        {
          value: (boiler + pump) / VOLTS,
          cause: `You counted boiler and pump only. The ${valves} valves and the programmer hang on the same fuse.`,
          consequence: `A sum that leaves out small loads can let a fuse seem large enough when it is not.`,
          look: `Follow every live that comes from the spur: ${put}.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, AMPS)} ${put} = ${figure(watts)} W, and ${figure(watts)} ÷ ${VOLTS}.`,
        consequence:
          given > SPUR_FUSE
            ? `At ${AMPS(given)} you would say a ${SPUR_FUSE} A fuse cannot carry it, and fit a larger one that no longer protects the flexes.`
            : `At ${AMPS(given)} the ${SPUR_FUSE} A fuse would still seem right, but your figure would mislead whoever compares it with a reading.`,
        look: `Add up the watts once more: ${put}. Then divide by ${VOLTS}. Which of the two steps gives your ${AMPS(given)}?`,
      }),
      hints: [
        'Add up the watts of everything behind the spur.',
        'Current in amps is watts divided by volts.',
        `Together they take ${figure(watts)} W.`,
      ],
      steps: [
        `All loads: ${put} = ${figure(watts)} W.`,
        `Current = watts ÷ volts = ${figure(watts)} ÷ ${VOLTS} = ${AMPS(value)}.`,
      ],
    };
  },
};
