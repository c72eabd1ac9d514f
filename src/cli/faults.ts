/** `npm run --silent faults -- FILE [--hazard ID] [--most 1|2|3] [--json]`: what must fail for a hazard to get through. */
import { parseArgs } from 'node:util';
import { failureId, sayFailure } from '../engine/faults/failure.ts';
import type { Hazard } from '../engine/faults/hazard.ts';
import { hazards } from '../engine/faults/hazards/index.ts';
import { type FailureSet, findLayers } from '../engine/faults/layers.ts';
import { positionOf, type System, settingsOf } from '../engine/model/system.ts';
import { capital, list } from '../engine/rules/words.ts';
import { FileError, show } from '../files/error.ts';
import { oneOf } from '../files/suggest.ts';
import { callersPath, readText } from './load.ts';
import { makeReader, type Sound } from './marker.ts';
import { complain, print } from './output.ts';

const USAGE = 'usage: npm run --silent faults -- FILE [--hazard ID] [--most 1|2|3] [--json]';

interface Asked {
  readonly file: string;
  readonly hazards: readonly Hazard[];
  readonly most: number;
  readonly asJson: boolean;
}

/** What the command line asks for; undefined when it says anything else. Throws a FileError for an unknown hazard. */
function given(): Asked | undefined {
  let line: ReturnType<typeof parsed>;
  try {
    line = parsed();
  } catch {
    return undefined;
  }
  const { values, positionals } = line;
  const [file, ...more] = positionals;
  const most = values.most ?? '2';
  if (file === undefined || more.length > 0 || !/^[123]$/.test(most)) return undefined;
  const wanted = hazards.filter(({ id }) => values.hazard === undefined || id === values.hazard);
  if (wanted.length === 0) {
    const ids = hazards.map(({ id }) => id);
    const expected = oneOf(String(values.hazard), ids);
    throw new FileError({ file: '--hazard', place: '', expected, found: show(values.hazard) });
  }
  return { file, hazards: wanted, most: Number(most), asJson: values.json === true };
}

const parsed = () =>
  parseArgs({
    options: { hazard: { type: 'string' }, most: { type: 'string' }, json: { type: 'boolean' } },
    allowPositionals: true,
  });

/** Runs the search; a person at a terminal sees how far it is. */
function search({ system, wires }: Sound, hazard: Hazard, most: number): FailureSet[] {
  const steps = findLayers(system, wires, hazard, most);
  const watched = process.stderr.isTTY;
  for (;;) {
    const step = steps.next();
    if (watched) {
      const far = step.done ? '' : `${hazard.title}: ${step.value.tried} of ${step.value.total} sets`;
      process.stderr.write(`\r\u001b[K${far}`);
    }
    if (step.done) return step.value;
  }
}

const positionsOf = (system: System, place: number): Record<string, string> =>
  Object.fromEntries(
    system.parts
      .filter(({ mover }) => mover >= 0)
      .map((part) => [part.id, positionOf(system, part, place)] as const),
  );

/** One hazard as a line of JSON: these keys, in this order. */
function jsonLine({ job, system }: Sound, hazard: Hazard, sets: readonly FailureSet[]): string {
  return `${JSON.stringify({
    job,
    hazard: hazard.id,
    sets: sets.map(({ failures, config }) => ({
      failures: failures.map((failure) => failureId(system, failure)),
      says: failures.map((failure) => sayFailure(system, failure)),
      inputs: settingsOf(system, config.inputs),
      positions: positionsOf(system, config.place),
    })),
  })}\n`;
}

const ways = (count: number) => `${count} ${count === 1 ? 'way' : 'ways'}`;

/** One hazard for people: sets by size, in words, and what stands beyond the wiring. */
function paragraphs({ system }: Sound, hazard: Hazard, sets: readonly FailureSet[], most: number): string {
  const lines = [hazard.title, hazard.says, ''];
  if (sets[0]?.failures.length === 0)
    lines.push('It is there with nothing failed: the wiring itself lets it through.');
  else
    for (let size = 1; size <= most; size++) {
      const found = sets.filter(({ failures }) => failures.length === size);
      const what = size === 1 ? 'One failure alone' : `${size === 2 ? 'Two' : 'Three'} failures together`;
      lines.push(found.length === 0 ? `${what}: none.` : `${what} (${ways(found.length)}):`);
      for (const { failures } of found)
        lines.push(`  ${capital(list(failures.map((failure) => sayFailure(system, failure))))}.`);
    }
  return `${[...lines, '', hazard.beyond].join('\n')}\n`;
}

try {
  const asked = given();
  if (!asked) {
    complain(USAGE);
    process.exitCode = 2;
  } else {
    const { file, most, asJson } = asked;
    const sound = makeReader()(readText(callersPath(file, 'faults'), file), file);
    for (const [k, hazard] of asked.hazards.entries()) {
      const sets = search(sound, hazard, most);
      // A hazard that needs no failure is the wiring's own fault.
      if (sets[0]?.failures.length === 0) process.exitCode = 1;
      const text = asJson ? jsonLine(sound, hazard, sets) : paragraphs(sound, hazard, sets, most);
      await print(k > 0 && !asJson ? `\n${text}` : text);
    }
  }
} catch (error) {
  if (!(error instanceof FileError)) throw error;
  complain(error.message);
  process.exitCode = 2;
}
