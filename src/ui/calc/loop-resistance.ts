import { sectionsOf } from '../../engine/meter/conductors.ts';
import { EXTERNAL_OHMS, faultLoop, type PlugFuse } from '../../engine/meter/loop-resistance.ts';
import { RUN_METRES } from '../../engine/meter/volt-drop.ts';
import { figure } from '../../engine/model/figure.ts';
import type { Calculator } from './calculator.ts';

const sections = [...new Set([...sectionsOf('flex'), ...sectionsOf('cable')])]
  .sort((a, b) => a - b)
  .map((mm2) => [String(mm2), `${mm2} mm²`] as const);

export const loopResistanceCalculator: Calculator = {
  id: 'loop-resistance',
  title: 'Loop resistance',
  summary: 'R1 + R2 of a run, and whether the plug-top fuse of the spur opens in time on a fault to earth.',
  also: 'R1+R2, Zs, earth fault loop impedance, Ze',
  fields: [
    {
      kind: 'choice',
      id: 'kind',
      label: 'Wiring',
      options: [
        ['cable', 'Fixed cable'],
        ['flex', 'Flex'],
      ],
      start: 'cable',
    },
    { kind: 'choice', id: 'line', label: 'Line core', options: sections, start: '1.5' },
    { kind: 'choice', id: 'earth', label: 'Earth core', options: sections, start: '1' },
    { kind: 'number', id: 'metres', range: RUN_METRES, start: 20, hint: 'One way' },
    { kind: 'number', id: 'spur', range: EXTERNAL_OHMS, start: 0.8, hint: 'Measured where the run begins' },
    {
      kind: 'choice',
      id: 'fuse',
      label: 'Fuse of the spur',
      options: [
        ['3', '3 A'],
        ['13', '13 A'],
      ],
      start: '3',
    },
  ],
  examples: [
    {
      name: '10 m of 0.75 mm² flex',
      given: { kind: 'flex', line: '0.75', earth: '0.75', metres: '10' },
    },
    { name: 'A poor earth behind 13 A', given: { spur: '1.6', fuse: '13' } },
  ],
  cautions: [
    'Loop tests are made live. They are work for people who are competent to test, with the right instrument.',
    'The 80 % line is a rule of thumb for readings taken cold. Other fuses and breakers have other limits.',
    'An earth of your own (a TT supply) has other rules: there a residual current device does the work.',
  ],
  work(given) {
    const loop = faultLoop(
      {
        kind: given.choice('kind') === 'flex' ? 'flex' : 'cable',
        line: Number(given.choice('line')),
        earth: Number(given.choice('earth')),
        metres: given.number('metres'),
      },
      given.number('spur'),
      Number(given.choice('fuse')) as PlugFuse,
    );
    const { r1r2, zs, passes, passesCold } = loop.value;
    const verdict = passesCold
      ? 'The fuse opens in time.'
      : passes
        ? 'Inside the limit, but above the 80 % rule of thumb for a reading taken cold.'
        : 'Too high: the fuse may open too late.';
    return {
      says: `R1 + R2 ${figure(r1r2, 3, true)} Ω, Zs ${figure(zs, 2, true)} Ω. ${verdict}`,
      passes: passesCold,
      lines: loop.lines,
      sources: [loop.source],
    };
  },
};
