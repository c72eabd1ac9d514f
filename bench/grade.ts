import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { type Section, sayTime, whole } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, median } from './stopwatch.ts';

const command = fileURLToPath(new URL('../src/cli/grade.ts', import.meta.url));

/** Seconds that `grade -` takes over these lines, and how many verdicts come back. */
async function grade(lines: readonly string[]): Promise<{ seconds: number; verdicts: number }> {
  const start = performance.now();
  const child = spawn(process.execPath, [command, '-'], { stdio: ['pipe', 'pipe', 'inherit'] });
  let verdicts = 0;
  child.stdout.on('data', (piece: Buffer) => {
    for (const byte of piece) if (byte === 10) verdicts++;
  });
  child.stdin.end(`${lines.join('\n')}\n`);
  await once(child, 'close');
  return { seconds: (performance.now() - start) / 1000, verdicts };
}

/** Verdicts a second through the command, right and wrong wirings mixed as the content has them. */
export async function timeGrade(
  { job, references, mistakes }: Material,
  { smoke }: Effort,
): Promise<Section> {
  const count = smoke ? 200 : 20_000;
  const mix = [...references, ...mistakes].map(({ wires }) => JSON.stringify({ job, wires }));
  const attempts = Array.from({ length: count }, (_, k) => mix[k % mix.length] ?? '');
  const run = async (lines: readonly string[]): Promise<number> => {
    const { seconds, verdicts } = await grade(lines);
    if (verdicts !== lines.length) throw new Error(`grade gave ${verdicts} verdicts on ${lines.length}`);
    return seconds;
  };
  const rounds = smoke ? [0] : [0, 1, 2];
  const starts: number[] = [];
  const wholes: number[] = [];
  for (const _ of rounds) {
    starts.push(await run(attempts.slice(0, 1)));
    wholes.push(await run(attempts));
  }
  const [start, all] = [median(starts), median(wholes)];
  return {
    title: `Verdicts through \`grade -\` (${whole(count)} attempts: ${references.length} right wirings and ${mistakes.length} mistakes in turn)`,
    figures: [
      { what: 'a second, start-up included', value: whole(count / all) },
      { what: 'a second, start-up left out', value: whole((count - 1) / Math.max(all - start, 1e-9)) },
      { what: 'start-up and one verdict', value: sayTime(start * 1e9) },
    ],
  };
}
