import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { judgeLayers } from '../../tools/layers/walk.ts';

const made: string[] = [];

/** Writes a small project into a folder of its own and judges it. */
function judged(files: Readonly<Record<string, string>>): string[] {
  const root = mkdtempSync(join(tmpdir(), 'layers-'));
  made.push(root);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
  return judgeLayers(root).map(({ file, line, says }) => `${file}:${line}: ${says}`);
}

afterEach(() => {
  for (const root of made.splice(0)) rmSync(root, { recursive: true });
});

test('a project whose imports all go down has nothing to answer for', () => {
  expect(
    judged({
      'src/engine/model/wire.ts': 'export type Wire = readonly [string, string];\n',
      'src/engine/model/part.ts': 'export type Kind = { name: string };\n',
      'src/engine/parts/pump.ts':
        "import type { Kind } from '../model/part.ts';\nexport const pump = {} as Kind;\n",
      'src/engine/parts/index.ts': "export { pump } from './pump.ts';\n",
      'src/engine/circuit/nets.ts':
        "import { pump } from '../parts/index.ts';\nexport const nets = [pump];\n",
      'src/course/lesson.ts':
        "import { nets } from '../engine/circuit/nets.ts';\nexport const n = nets.length;\n",
      'src/files/attempt.ts': "import { z } from 'zod';\nexport const attempt = z.array(z.string());\n",
      'src/ui/Strip.svelte':
        '<script lang="ts">\n  import { n } from "../course/lesson.ts";\n</script>\n{n}\n',
      'src/pages/index.astro': "---\nimport Strip from '../ui/Strip.svelte';\n---\n<Strip />\n",
      'src/cli/grade.ts':
        "import { readFileSync } from 'node:fs';\nimport '../files/attempt.ts';\nreadFileSync;\n",
    }),
  ).toEqual([]);
});

test('an engine file that imports from the pages above it is named with its line', () => {
  expect(
    judged({
      'src/engine/circuit/nets.ts':
        "// nets\nimport { strip } from '../../ui/strip.ts';\nexport { strip };\n",
    }),
  ).toEqual(['src/engine/circuit/nets.ts:2: src/engine imports from itself alone, not src/ui']);
});

test.each([
  ['a type import', "import type { X } from '../rules/x.ts';\nexport type Y = X;\n"],
  ['an import() type', "export type Y = import('../rules/x.ts').X;\n"],
  ['a dynamic import', "export const load = () => import('../rules/x.ts');\n"],
  ['a re-export', "export { x } from '../rules/x.ts';\n"],
])('%s from a later part of the engine is caught', (_name, text) => {
  expect(judged({ 'src/engine/explore/settle.ts': text })).toEqual([
    'src/engine/explore/settle.ts:1: engine/explore imports from model, parts, circuit, meter, plant, not engine/rules',
  ]);
});

test('the meter and the plant, side by side in the order, do not import each other', () => {
  expect(judged({ 'src/engine/meter/volts.ts': "import '../plant/flow.ts';\n" })).toHaveLength(1);
});

test('one part does not import another', () => {
  expect(judged({ 'src/engine/parts/boiler.ts': "import { pump } from './pump.ts';\npump;\n" })).toEqual([
    'src/engine/parts/boiler.ts:1: a part imports the part-kind types only, not another part',
  ]);
});

test.each([
  'Date.now()',
  'new Date()',
  'Math.random()',
  'document.title',
  'globalThis.x',
  'process.env',
  'setTimeout(f, 1)',
  'const f = fetch',
])('the engine may not say %s', (words) => {
  expect(judged({ 'src/engine/circuit/nets.ts': `export const a = 1;\n${words};\n` })).toHaveLength(1);
});

test('a name of our own that matches a banned one is left alone', () => {
  const text = 'export const f = (history: { Date: number }, location = 1) => history.Date + location;\n';
  expect(judged({ 'src/engine/explore/moves.ts': text })).toEqual([]);
});

test.each([
  ['src/engine/circuit/a.ts', "import 'node:fs';\n"],
  ['src/engine/circuit/a.ts', "import 'svelte';\n"],
  ['src/course/a.ts', "import 'zod';\n"],
  ['src/files/a.ts', "import 'lunr';\n"],
  ['src/files/a.ts', "import '../ui/a.ts';\n"],
  ['src/files/a.ts', "import './site/folder.ts';\n"],
  ['src/ui/a.ts', "import '../files/site/folder.ts';\n"],
  ['src/ui/a.ts', "import 'node:fs';\n"],
  ['src/ui/a.ts', "import './Page.astro';\n"],
  ['src/engine/circuit/a.ts', "import '../../styles/a.css';\n"],
  ['src/ui/a.ts', "import '../cli/a.ts';\n"],
  ['src/pages/a.ts', "import '../cli/a.ts';\n"],
  ['src/cli/a.ts', "import '../ui/a.ts';\n"],
  ['src/ui/A.svelte', '<p>{a}</p>\n<script lang="ts">\n  import "../pages/a.ts";\n</script>\n'],
  ['src/pages/a.astro', "---\nconst a = 1;\nimport '../cli/a.ts';\n---\n"],
  ['src/pages/b.astro', "---\nconst a = 1;\n---\n<script>\nimport '../cli/a.ts';\n</script>\n"],
  ['src/pages/c.mdx', "import A from '../cli/a.ts';\n\nWe import it here.\n"],
  ['src/utils/a.ts', 'export const a = 1;\n'],
  ['src/engine/helpers/a.ts', 'export const a = 1;\n'],
  ['src/ui/b.ts', 'export const put = (e: Element) => {\n  e.innerHTML = "";\n};\n'],
  ['src/ui/B.svelte', '<p>{@html words}</p>\n'],
  ['src/pages/d.astro', '<p set:html={words} />\n'],
])('%s with %j is refused', (name, text) => {
  expect(judged({ [name]: text })).toHaveLength(1);
});

test('a source file has at most 400 lines', () => {
  const lines = (count: number) => 'export {};\n'.repeat(count);
  expect(judged({ 'src/ui/long.ts': lines(400) })).toEqual([]);
  expect(judged({ 'src/ui/long.ts': lines(401) })).toEqual([
    'src/ui/long.ts:401: a source file has at most 400 lines, not 401',
  ]);
});
