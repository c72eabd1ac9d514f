/** `npm run --silent grade -- FILE…`: a verdict a line for every attempt; `-` reads one attempt a line. */

import { tooBig } from '../files/attempt.ts';
import { FileError } from '../files/error.ts';
import { decodeText } from '../files/text.ts';
import { linesOf } from './lines.ts';
import { callersPath, readFailure, readText } from './load.ts';
import { makeReader, verdictLine } from './marker.ts';
import { complain, print } from './output.ts';

const USAGE =
  'usage: npm run --silent grade -- FILE… (an attempt in each), or - for one attempt a line on standard input';

const files = process.argv.slice(2);
const read = files.length > 0 ? makeReader() : undefined;
let exitCode = 0;

/** The verdict on an attempt with its line end; nothing, and a complaint, when it is bad input. */
function mark(name: string, textOf: () => string): string {
  try {
    if (!read) return '';
    const { job, judge, wires } = read(textOf(), name);
    const verdict = judge.judge(wires);
    if (!verdict.accepted) exitCode ||= 1;
    return `${verdictLine(job, verdict)}\n`;
  } catch (error) {
    refuse(error);
    return '';
  }
}

/** Anything but bad input is a fault of ours, and stays loud. */
function refuse(error: unknown): void {
  if (!(error instanceof FileError)) throw error;
  // Each line of standard input is a text of its own, so its first line says nothing.
  complain(error.message.replace(/^(standard input, line \d+: )line 1, /, '$1'));
  exitCode = 2;
}

async function markLines(input: AsyncIterable<Uint8Array>): Promise<void> {
  let count = 0;
  try {
    for await (const lines of linesOf(input)) {
      // Together, because every write costs a call; a piece of input is at most 64 KiB.
      let verdicts = '';
      for (const line of lines) {
        const name = `standard input, line ${++count}`;
        verdicts += mark(name, () => {
          if (!line) throw tooBig(name);
          return decodeText(line, name);
        });
      }
      await print(verdicts);
    }
  } catch (error) {
    const code = error instanceof Error && 'code' in error;
    refuse(code ? readFailure(error, 'standard input', 'attempts, one a line') : error);
  }
  if (count === 0 && exitCode !== 2) {
    const expected = 'an attempt a line';
    refuse(new FileError({ file: 'standard input, line 1', place: '', expected, found: 'nothing' }));
  }
}

if (files.length === 0) {
  complain(USAGE);
  exitCode = 2;
}
for (const file of files) {
  if (file === '-') await markLines(process.stdin);
  else await print(mark(file, () => readText(callersPath(file, 'grade'), file)));
}
process.exitCode = exitCode;
