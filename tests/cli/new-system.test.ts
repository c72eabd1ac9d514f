import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { checkContent } from '../../src/cli/content-check.ts';
import { openLibrary } from '../../src/cli/library.ts';
import { makeReader } from '../../src/cli/marker.ts';
import { root, scratch } from './run.ts';

const fixture = join(root, 'tests/fixtures/new-system');
const asker = { file: 'tests', place: 'system' };

/** A system of the course with the fixture's files beside it: what a contributor has after adding one. */
function contentWithNewSystem(): string {
  const folder = join(scratch, 'content-with-a-new-system');
  mkdirSync(folder, { recursive: true });
  for (const part of ['systems', 'jobs']) {
    cpSync(join(root, 'content', part, 'three-port.yaml'), join(folder, part, 'three-port.yaml'));
    cpSync(join(fixture, part), join(folder, part), { recursive: true });
  }
  return folder;
}

test('a system added as two files of data is checked, offered as a job and judged, with no change of code', {
  timeout: 60_000,
}, () => {
  const folder = contentWithNewSystem();
  const library = openLibrary(pathToFileURL(`${folder}/`));
  expect(library.systemIds).toContain('heating-only');
  expect(checkContent(library).troubles.map(({ message }) => message)).toEqual([]);

  const { references } = library.system('heating-only', asker);
  const attempt = (wires: unknown) => JSON.stringify({ job: 'heating-only', wires });
  const read = makeReader(library);
  const right = read(attempt(references[0]?.wires), 'right.json');
  expect(right.judge.judge(right.wires).accepted).toBe(true);
  const bare = read(attempt([]), 'bare.json');
  expect(bare.judge.judge(bare.wires).findings.map(({ id }) => id)).toContain('runs-when-called');
});

test('what is wrong in its file is named with its place', () => {
  const folder = contentWithNewSystem();
  const file = join(folder, 'systems/heating-only.yaml');
  const text = readFileSync(file, 'utf8');
  const said = (from: string, to: string) => {
    writeFileSync(file, text.replace(from, to));
    return checkContent(openLibrary(pathToFileURL(`${folder}/`))).troubles.map(({ message }) => message);
  };
  expect(said('room-stat/CALL, boiler/SL', 'room-stat/SAT, boiler/SL')[0]).toMatch(
    /^content\/systems\/heating-only.yaml: references\[0\]/,
  );
  expect(said('heats: radiators', 'heats: radiator')[0]).toMatch(
    /demands\[0\].heats: .*did you mean "radiators"/,
  );
});
