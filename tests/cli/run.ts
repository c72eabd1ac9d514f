import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';
import type { Wire } from '../../src/engine/model/wiring.ts';
import { applyMistake } from '../../src/files/mistake.ts';
import { parseSystem } from '../../src/files/system.ts';

export const root = fileURLToPath(new URL('../../', import.meta.url));
const own = join(root, 'node_modules/.bin/node');
/** The Node that npm would start: the one in the lock file, where there is one for this machine. */
export const node = existsSync(own) ? own : process.execPath;

/** What a command said, and how it ended. */
export interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly lines: string[];
  readonly errors: string[];
}

const linesIn = (text: string): string[] => text.split('\n').slice(0, -1);

/** Runs a command of `src/cli/` as npm does. */
export function run(command: string, args: readonly string[], input: string | Uint8Array = ''): Said {
  const { status, stdout, stderr } = spawnSync(node, [join(root, 'src/cli', `${command}.ts`), ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { code: status, out: stdout, lines: linesIn(stdout), errors: linesIn(stderr) };
}

const folder = mkdtempSync(join(tmpdir(), 'attempts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
export const scratch = folder;

/** Writes a file for a test and gives its path. */
export function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const JOB = 'unvented-three-port';
const yaml = readFileSync(join(root, `content/systems/${JOB}.yaml`), 'utf8');
/** The system's own right and wrong wirings. */
export const wirings = parseSystem(yaml, 'system');
export const right: readonly Wire[] = wirings.references[0]?.wires ?? [];
export const wrong: readonly (readonly Wire[])[] = wirings.mistakes.map((mistake) =>
  applyMistake(wirings.references, mistake),
);

/** An attempt at the flagship job as its file says it. */
export const attempt = (wires: unknown, job: unknown = JOB): string => JSON.stringify({ job, wires });
