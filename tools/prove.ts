/** `npm run prove`: runs every step, shows what failed, and ends with one line: N passed, N failed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Step, steps } from './steps.ts';
import { lastLine, type Report, type Tally, tallyOfExit, tallyOfReport, total } from './tally.ts';

const reports = mkdtempSync(join(tmpdir(), 'switched-live-'));
const failedScripts = new Set<string>();

function readReport(file: string): Report | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Report;
  } catch {
    return undefined;
  }
}

function prove(step: Step): Tally {
  const missing = step.after?.filter((script) => failedScripts.has(script)) ?? [];
  if (missing.length > 0) {
    console.log(`✗ ${step.says}: not run, because it needs ${missing.join(' and ')}`);
    return { passed: 0, failed: 1 };
  }
  const reportFile = join(reports, `${step.script}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`];
  const args = [...(step.args ?? []), ...(step.counts ? reporters : [])];
  const started = performance.now();
  const run = spawnSync('npm', ['run', '--silent', step.script, '--', ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 256 * 1024 * 1024,
    shell: process.platform === 'win32',
  });
  const exitCode = run.status ?? 1;
  const tally = step.counts ? tallyOfReport(readReport(reportFile), exitCode) : tallyOfExit(exitCode);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${tally.failed === 0 ? '✓' : '✗'} ${step.says}: ${lastLine(tally)} (${seconds} s)`);
  if (tally.failed > 0) console.log(`${run.stdout ?? ''}${run.stderr ?? ''}${run.error?.message ?? ''}`);
  return tally;
}

const tallies = steps.map((step) => {
  const tally = prove(step);
  if (tally.failed > 0) failedScripts.add(step.script);
  return tally;
});
rmSync(reports, { recursive: true, force: true });

const sum = total(tallies);
console.log(lastLine(sum));
process.exitCode = sum.failed === 0 ? 0 : 1;
