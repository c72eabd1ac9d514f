/** `npm run --silent heat -- FILE …`: the cylinder's temperature over a day of an attempt, as CSV. */
import { parseArgs } from 'node:util';
import { runDay } from '../engine/faults/day/run.ts';
import { ORDINARY_DAY } from '../engine/faults/day/settings.ts';
import { allFailures, compatible, type Failure, failureId } from '../engine/faults/failure.ts';
import { expects, type Range } from '../engine/model/range.ts';
import type { System } from '../engine/model/system.ts';
import type { Wire } from '../engine/model/wiring.ts';
import { FileError, show } from '../files/error.ts';
import { closest, oneOf } from '../files/suggest.ts';
import { heatGrid } from './heat-grid.ts';
import { csv } from './layout.ts';
import { callersPath, readText } from './load.ts';
import { makeReader } from './marker.ts';
import { complain, print } from './output.ts';

const USAGE =
  'usage: npm run --silent heat -- FILE [--fail "two-port: stuck open"]… [--at HOURS] [--hours HOURS]';

const HOURS: Range = { name: '--hours', unit: 'hours', low: 0.1, high: 168 };

interface Asked {
  readonly file: string;
  readonly fail: readonly string[];
  /** Hours into the run, or left out. */
  readonly at?: string | undefined;
  readonly hours: string;
}

/** The command line; undefined when it does not fit the usage. */
function given(): Asked | undefined {
  try {
    const { values, positionals } = parseArgs({
      options: {
        fail: { type: 'string', multiple: true, default: [] },
        at: { type: 'string' },
        hours: { type: 'string', default: String(ORDINARY_DAY.hours) },
      },
      allowPositionals: true,
    });
    const [file, ...more] = positionals;
    return file === undefined || more.length > 0 ? undefined : { file, ...values };
  } catch {
    return undefined;
  }
}

/** @throws FileError when an option is not a number in its range */
function numberIn(text: string, range: Range): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (value >= range.low && value <= range.high) return value;
  throw new FileError({ file: range.name, place: '', expected: expects(range), found: show(text) });
}

/** @throws FileError for a failure that this wiring cannot have, or two that cannot be at once */
function failuresOf(system: System, wires: readonly Wire[], names: readonly string[]): Failure[] {
  const known = new Map(allFailures(system, wires).map((failure) => [failureId(system, failure), failure]));
  return names.map((name, k) => {
    const failure = known.get(name);
    const refuse = (expected: string) =>
      new FileError({ file: '--fail', place: '', expected, found: show(name) });
    if (!failure) throw refuse(oneOf(name, nearby(name, [...known.keys()])));
    const other = names.slice(0, k).find((earlier) => {
      const before = known.get(earlier);
      return before && (before === failure || !compatible(before, failure));
    });
    if (other !== undefined) throw refuse(`a failure that can be there together with "${other}"`);
    return failure;
  });
}

/** The failures of the part that a wrong name seems to mean; the parts' own when it means none. */
function nearby(name: string, all: readonly string[]): string[] {
  const part = (id: string) => id.slice(0, Math.max(0, id.indexOf(':')));
  const meant = closest(part(name), new Set(all.map(part)));
  return all.filter((id) => (meant === undefined ? part(id) !== 'wire' : part(id) === meant));
}

async function writeRun({ file, fail, at, hours }: Asked): Promise<void> {
  const length = numberIn(hours, HOURS);
  // Left out, it is the ordinary hour, or the end of a run too short for it.
  const hour = at ?? String(Math.min(ORDINARY_DAY.failAt, length));
  const failAt = numberIn(hour, { name: '--at', unit: 'hours', low: 0, high: length });
  const { system, wires } = makeReader()(readText(callersPath(file, 'heat'), file), file);
  const failures = failuresOf(system, wires, fail);
  const run = runDay(system, wires, { ...ORDINARY_DAY, hours: length, failAt }, failures);
  await print(csv(heatGrid(system, run)));
}

const asked = given();
if (!asked) {
  complain(USAGE);
  process.exitCode = 2;
} else {
  try {
    await writeRun(asked);
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    complain(error.message);
    process.exitCode = 2;
  }
}
