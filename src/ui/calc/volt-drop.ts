import {
  dropAllowed,
  FLEX_AMPS,
  flexCarries,
  flexDrop,
  RUN_AMPS,
  RUN_METRES,
  TABLE_SECTIONS,
  tableDrop,
} from '../../engine/meter/volt-drop.ts';
import { figure } from '../../engine/model/figure.ts';
import type { Calculator } from './calculator.ts';

const options = [
  ...[...FLEX_AMPS.keys()].map((mm2) => [`flex ${mm2}`, `Flex, ${mm2} mm²`] as const),
  ...TABLE_SECTIONS.map((mm2) => [`cable ${mm2}`, `Fixed cable, ${mm2} mm²`] as const),
];

export const voltDropCalculator: Calculator = {
  id: 'volt-drop',
  title: 'Volt drop of a flex run',
  summary: 'The volts a run of flex or cable loses out and back, and whether that is allowed.',
  also: 'voltage drop, mV/A/m, cable size',
  fields: [
    { kind: 'choice', id: 'wiring', label: 'Wiring', options, start: 'flex 0.75' },
    { kind: 'number', id: 'metres', range: RUN_METRES, start: 10, hint: 'One way' },
    { kind: 'number', id: 'amps', range: RUN_AMPS, start: 1 },
  ],
  examples: [
    { name: '20 m of 1.0 mm² cable at half an amp', given: { wiring: 'cable 1', metres: '20', amps: '0.5' } },
    { name: 'An overloaded flex', given: { wiring: 'flex 0.5', metres: '5', amps: '4' } },
  ],
  cautions: [
    'The limit is for the whole way from the origin of the supply. The rest of the way has spent some of it.',
    'Near hot pipes use heat-resistant flex. Isolate, lock off and prove dead before you work on any of it.',
    'The maker’s instructions and the wiring regulations in force win.',
  ],
  work(given) {
    const [kind, size] = given.choice('wiring').split(' ');
    const run = { mm2: Number(size), metres: given.number('metres'), amps: given.number('amps') };
    if (kind === 'cable') {
      const drop = tableDrop(run);
      const allowed = dropAllowed(drop.value);
      return {
        says: `${figure(drop.value, 2, true)} V lost.`,
        passes: allowed.value,
        lines: [...drop.lines, ...allowed.lines],
        sources: [drop.source, allowed.source],
      };
    }
    const [cold, warm, carries] = [flexDrop(run, false), flexDrop(run, true), flexCarries(run.mm2, run.amps)];
    const allowed = dropAllowed(warm.value);
    return {
      says:
        `${figure(cold.value, 2, true)} V lost with the flex cool, ${figure(warm.value, 2, true)} V at 70 °C.` +
        (carries.value ? '' : ' The flex is overloaded.'),
      passes: allowed.value && carries.value,
      lines: [...cold.lines, ...warm.lines, ...allowed.lines, ...carries.lines],
      sources: [cold.source, allowed.source, carries.source],
    };
  },
};
