import { once } from 'node:events';

/** When nobody reads on (`| head -1`), the command ends quietly, with the code that shells give a broken pipe. */
const BROKEN_PIPE = 141;

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(BROKEN_PIPE);
  throw error;
});
process.stderr.on('error', () => process.exit(BROKEN_PIPE));

/** Writes whole lines to standard output, and waits while the reader is behind. */
export async function print(lines: string): Promise<void> {
  if (lines !== '' && !process.stdout.write(lines)) await once(process.stdout, 'drain');
}

/** Writes one line to standard error. */
export function complain(line: string): void {
  process.stderr.write(`${line}\n`);
}
