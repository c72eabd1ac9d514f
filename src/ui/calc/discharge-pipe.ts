import {
  ADG,
  dischargePipe,
  ELBOWS,
  type Outlet,
  RUN,
  TABLE_3_1,
} from '../../engine/plant/discharge-pipe.ts';
import { D1_LENGTH, DISCHARGE_RULES, d1Length } from '../../engine/plant/discharge-rules.ts';
import type { Calculator } from './calculator.ts';

export const dischargePipeCalculator: Calculator = {
  id: 'discharge-pipe',
  title: 'Discharge pipe, D1 and D2',
  summary: 'The copper size of the pipe from the tundish, with each elbow counted as pipe.',
  also: 'tundish, relief valve, G3, D1, D2',
  fields: [
    {
      kind: 'choice',
      id: 'outlet',
      label: 'Outlet of the safety valve',
      options: Object.keys(TABLE_3_1).map((outlet) => [outlet, outlet] as const),
      start: 'G 1/2',
    },
    { kind: 'number', id: 'd1', range: D1_LENGTH, start: 400, hint: 'Valve to tundish' },
    { kind: 'number', id: 'run', range: RUN, start: 7, hint: 'Tundish to the end, along the pipe' },
    { kind: 'number', id: 'elbows', range: ELBOWS, start: 4, hint: 'All of them in D2' },
  ],
  examples: [
    { name: 'Worked example of Approved Document G', given: { outlet: 'G 1/2', run: '7', elbows: '4' } },
    { name: 'Right on the limit', given: { outlet: 'G 3/4', run: '6', elbows: '3' } },
    { name: 'Too long for the table', given: { outlet: 'G 1', run: '26', elbows: '2' } },
  ],
  rules: DISCHARGE_RULES,
  rulesSource: `paragraphs of ${ADG}`,
  cautions: [
    'What leaves this pipe is scalding water and steam. Its end must be safe for anyone who may stand there.',
    'Unvented hot water is work for qualified people. The maker’s instructions and local regulations win.',
    'A run too long for the table needs a calculation by the standard. Plastic has rules of its own.',
  ],
  work(given) {
    const pipe = dischargePipe(given.choice('outlet') as Outlet, given.number('run'), given.number('elbows'));
    const short = d1Length(given.number('d1'));
    const { d1, d2 } = pipe.value;
    const size =
      d2 === undefined
        ? 'No size in the table is enough for this run.'
        : `D1 ${d1} mm, D2 ${d2} mm or larger.`;
    return {
      says: short.value ? size : `${size} D1 is too long.`,
      passes: d2 !== undefined && short.value,
      lines: [...short.lines, ...pipe.lines],
      sources: [pipe.source, short.source],
    };
  },
};
