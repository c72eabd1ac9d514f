import { expect, test } from 'vitest';
import { filesOfPage, filesOnTouch, importsOf, inlineScripts } from '../../bench/scripts.ts';

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
