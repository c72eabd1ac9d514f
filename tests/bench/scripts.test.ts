import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, onTestFinished, test } from 'vitest';
import { filesOfPage, filesOnTouch, importsOf, inlineScripts, weighPage } from '../../bench/scripts.ts';

const html = `
  <script type="module" src="/_astro/page.js"></script>
  <link rel="modulepreload" href="/_astro/early.js">
  <script>run()</script><script type="module">import "/_astro/x.js"</script>
  <script type="application/json">{"run": 1}</script><script type="application/ld+json">{}</script>
  <astro-island component-url="/_astro/Wiring.js" renderer-url="/_astro/client.js" client="load"></astro-island>`;

test("a page's scripts, early fetches and islands are all found", () => {
  expect(filesOfPage(html).sort()).toEqual(
    ['Wiring', 'client', 'early', 'page'].map((name) => `/_astro/${name}.js`),
  );
});

test('code in the page counts as a script, and data does not', () => {
  expect(inlineScripts(html)).toEqual(['run()', 'import "/_astro/x.js"']);
});

test('imports at once are told from those on demand, and paths are read from the script that names them', () => {
  const code = `import{a as b}from"./a.js";import"./b.js";export*from'../c.js';const d=()=>import("./d.js");new Worker("/w.js")`;
  expect(importsOf(code, '/_astro/main.js')).toEqual({
    now: ['/_astro/a.js', '/_astro/b.js', '/c.js'],
    later: ['/_astro/d.js', '/w.js'],
  });
});

test('an island that sleeps until it is touched asks for its files later', () => {
  const asleep = html.replace('client="load"', 'client="touch"');
  expect(filesOfPage(asleep).sort()).toEqual(['/_astro/early.js', '/_astro/page.js']);
  expect(filesOnTouch(asleep)).toEqual(['/_astro/Wiring.js', '/_astro/client.js']);
  expect(filesOnTouch(html)).toEqual([]);
});

test('What a sleeping island and its imports weigh comes later, and what the page shares with them comes at once', () => {
  const site = mkdtempSync(join(tmpdir(), 'weigh-'));
  onTestFinished(() => rmSync(site, { recursive: true }));
  const files = {
    'page.js': 'import"./shared.js";',
    'shared.js': 'export const shared = 1;',
    'Wiring.js': 'import"./shared.js";import"./drawing.js";',
    'drawing.js': 'export const drawing = [1, 2, 3];',
    'client.js': 'export default () => {};',
  };
  mkdirSync(join(site, '_astro'));
  for (const [name, code] of Object.entries(files)) writeFileSync(join(site, '_astro', name), code);
  const weigh = (names: readonly (keyof typeof files)[]) =>
    names.reduce((sum, name) => sum + gzipSync(files[name], { level: 9 }).length, 0);
  const island = (client: string) =>
    `<script type="module" src="/_astro/page.js"></script>
     <astro-island component-url="/_astro/Wiring.js" renderer-url="/_astro/client.js" client="${client}"></astro-island>`;

  writeFileSync(join(site, 'index.html'), island('touch'));
  const asleep = weighPage(site, '');
  expect(asleep.atOnce).toBe(weigh(['page.js', 'shared.js']));
  expect(asleep.later).toBe(weigh(['Wiring.js', 'drawing.js', 'client.js']));

  writeFileSync(join(site, 'index.html'), island('load'));
  const awake = weighPage(site, '');
  expect(awake.atOnce).toBe(asleep.atOnce + asleep.later);
  expect(awake.later).toBe(0);
});
