import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const folder = process.env.SITE_FOLDER ?? 'dist';
const pages = new Map(
  globSync('**/*.html', { cwd: folder }).map((name) => [
    `/${name}`.replace(/index\.html$/, ''),
    readFileSync(join(folder, name), 'utf8'),
  ]),
);
const files = new Set(globSync('**/*.*', { cwd: folder }).map((name) => `/${name}`));

test('The site has its jobs, lessons, calculators and what-if pages', () => {
  for (const part of ['jobs', 'lessons', 'calculators', 'what-if']) {
    const found = [...pages.keys()].filter((path) => path.startsWith(`/${part}/`) && path !== `/${part}/`);
    expect(found.length, part).toBeGreaterThan(1);
  }
});

test('Every link inside the site leads to a page, and every anchor to its place in it', () => {
  const broken: string[] = [];
  for (const [path, text] of pages) {
    for (const [, link = ''] of text.matchAll(/<a\b[^>]*\shref="([^"]+)"/g)) {
      if (/^[a-z]+:/.test(link)) continue;
      const { pathname, hash } = new URL(link, `http://site${path}`);
      const goal = pages.get(pathname);
      if (goal === undefined && !files.has(pathname)) broken.push(`${path}: ${link}`);
      if (!hash || goal === undefined) continue;
      // A state is named like `#live-1x=5`: the place before the sign is there. A tool reads the whole of its own.
      const [place = '', value] = decodeURIComponent(hash.slice(1)).split('=');
      const isSample = pathname === '/coursework/' && place === 'sample';
      if (isSample && files.has(`/course/coursework/${value}.json`)) continue;
      const isTool = /^\/(practice|drawings\/[^/]+|what-if\/[^/]+|bench|jobs\/[^/]+)\/$/.test(pathname);
      if (!isTool && !goal.includes(`id="${place}"`)) broken.push(`${path}: no place ${hash} in ${pathname}`);
    }
  }
  expect(broken).toEqual([]);
});
