import { controlSum, END_SWITCH_AMPS, LOAD_COUNT, LOAD_WATTS } from '../../engine/meter/fuse-sum.ts';
import { figure } from '../../engine/model/figure.ts';
import type { Range } from '../../engine/model/range.ts';
import type { Calculator } from './calculator.ts';

const watts = (name: string): Range => ({ ...LOAD_WATTS, name });

export const fuseSumCalculator: Calculator = {
  id: 'fuse-sum',
  title: 'Fuse and current of the controls',
  summary:
    'What boiler, pump, valves and programmer draw together, against the spur’s fuse and an end switch.',
  also: '3 amp, fused spur, FCU, BS 1362, load',
  fields: [
    { kind: 'number', id: 'boiler', range: watts('Boiler electrics'), start: 140 },
    { kind: 'number', id: 'pump', range: watts('Pump'), start: 60 },
    { kind: 'number', id: 'valves', range: { ...LOAD_COUNT, name: 'Valve motors' }, start: 2 },
    { kind: 'number', id: 'valve', range: watts('Each valve motor'), start: 6 },
    { kind: 'number', id: 'programmer', range: watts('Programmer'), start: 5 },
    { kind: 'number', id: 'other', range: watts('Anything else'), start: 0 },
    {
      kind: 'choice',
      id: 'switched',
      label: 'The end switch feeds',
      options: [
        ['both', 'boiler and pump'],
        ['boiler', 'boiler only'],
      ],
      start: 'both',
    },
    {
      kind: 'number',
      id: 'rating',
      range: END_SWITCH_AMPS,
      start: 2.2,
      hint: 'On the valve’s label; often 2 to 3 A',
    },
  ],
  examples: [
    { name: 'An old 100 W pump', given: { pump: '100' } },
    { name: 'An immersion heater by mistake', given: { other: '3000' } },
  ],
  cautions: [
    'Isolate, lock off and prove dead before you open a spur or touch a terminal.',
    'Motors draw more as they start, and more than their watts suggest. Leave room.',
    'One spur feeds the boiler and all of its controls. The maker’s instructions and local regulations win.',
  ],
  work(given) {
    const throughEndSwitch = true;
    const sum = controlSum(
      [
        { name: 'Boiler', watts: given.number('boiler'), throughEndSwitch },
        { name: 'Pump', watts: given.number('pump'), throughEndSwitch: given.choice('switched') === 'both' },
        { name: 'Valves', watts: given.number('valve'), count: given.number('valves') },
        { name: 'Programmer', watts: given.number('programmer') },
        { name: 'Other', watts: given.number('other') },
      ],
      given.number('rating'),
    );
    const { watts, amps, fusePasses, endSwitchPasses } = sum.value;
    const fuse = fusePasses ? 'A 3 A fuse carries it.' : 'Too much for a 3 A fuse.';
    return {
      says: `${figure(watts)} W, ${figure(amps, 2, true)} A. ${fuse}${endSwitchPasses ? '' : ' Too much for the end switch.'}`,
      passes: fusePasses && endSwitchPasses,
      lines: sum.lines,
      sources: [sum.source],
    };
  },
};
