/** `npm run bench`: figures and ratios from one run on one machine; `-- --smoke` only shows that everything runs. */
import { cpus } from 'node:os';
import { timeDiagnosis } from './diagnose.ts';
import { compareEvaluators } from './evaluators.ts';
import { timeFaults } from './faults.ts';
import { type Section, sayTable } from './figure.ts';
import { timeGrade } from './grade.ts';
import { timeHeat } from './heat.ts';
import { timeMarks } from './marks.ts';
import { loadMaterial } from './material.ts';
import { compareNgspice } from './ngspice.ts';
import { timeParts } from './parts.ts';
import { timeVerdicts } from './verdicts.ts';
import { weighPages } from './weight.ts';
import { timeZones } from './zones.ts';

const effort = { smoke: process.argv.includes('--smoke') };
const material = loadMaterial();

const sections: Section[] = [
  compareEvaluators(material, effort),
  await compareNgspice(material, effort),
  timeParts(material, effort),
  timeVerdicts(material, effort),
  await timeZones(effort),
  await timeFaults(material, effort),
  timeDiagnosis(effort),
  timeHeat(material, effort),
  await timeGrade(material, effort),
  timeMarks(effort),
  weighPages(material.job, effort),
];
console.log(
  `Node ${process.version}, ${cpus()[0]?.model ?? 'processor unknown'}; medians of one run, in processor time (\`grade\` by the clock)\n`,
);
console.log(sayTable(sections, !effort.smoke));
if (effort.smoke) console.log('\nA smoke run: everything ran, but a few rounds measure nothing.');
