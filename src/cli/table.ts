/** `npm run --silent table -- FILE [--csv]`: every judged state of an attempt. */
import { parseArgs } from 'node:util';
import { configurations, isWide } from '../engine/grade/size.ts';
import { type StateRow, stateTable } from '../engine/grade/table.ts';
import type { Verdict } from '../engine/grade/verdict.ts';
import { FileError } from '../files/error.ts';
import { aligned, csv, gridOf } from './layout.ts';
import { callersPath, readText } from './load.ts';
import { makeReader, type Sound } from './marker.ts';
import { complain, print } from './output.ts';

const USAGE = 'usage: npm run --silent table -- FILE [--csv]';

/** The file named and whether it is to be CSV; undefined when the command line says anything else. */
function given(): { file: string; asCsv: boolean } | undefined {
  try {
    const { values, positionals } = parseArgs({
      options: { csv: { type: 'boolean' } },
      allowPositionals: true,
    });
    const [file, ...more] = positionals;
    return file === undefined || more.length > 0 ? undefined : { file, asCsv: values.csv === true };
  } catch {
    return undefined;
  }
}

/** How many states fail, and what else the verdict holds: rules about the wires, or about valves on the move. */
function summary(rows: readonly StateRow[], { accepted, findings }: Verdict): string {
  const failing = rows.filter(({ broken }) => broken.length > 0).length;
  const shown = new Set(rows.flatMap(({ broken }) => broken));
  const others = findings.filter(({ id }) => !shown.has(id));
  const lines = [`${rows.length} states judged, ${failing} fail: ${accepted ? 'accepted' : 'rejected'}.`];
  for (const { severity, id, says } of others) lines.push(`Also ${severity}, ${id}: ${says}`);
  return `\n${lines.join('\n')}\n`;
}

async function show({ system, judge, wires }: Sound, file: string, asCsv: boolean): Promise<void> {
  if (isWide(system)) {
    const expected = 'an attempt on a system with few enough states to list';
    throw new FileError({
      file,
      place: 'job',
      expected,
      found: `${configurations(system)} of them: grade it instead`,
    });
  }
  const rows = stateTable(system, wires);
  const verdict = judge.judge(wires);
  const grid = gridOf(system, rows);
  await print(asCsv ? csv(grid) : aligned(grid) + summary(rows, verdict));
  process.exitCode = verdict.accepted ? 0 : 1;
}

const asked = given();
if (!asked) {
  complain(USAGE);
  process.exitCode = 2;
} else {
  try {
    await show(
      makeReader()(readText(callersPath(asked.file, 'table'), asked.file), asked.file),
      asked.file,
      asked.asCsv,
    );
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    complain(error.message);
    process.exitCode = 2;
  }
}
