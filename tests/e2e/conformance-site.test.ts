import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openPage } from './support/browser.ts';

/* What holds for every page of the built site, read from its files. */
const folder = process.env.SITE_FOLDER ?? 'dist';
const pages = globSync('**/*.html', { cwd: folder })
  .map((name) => ({
    path: `/${name}`.replace(/index\.html$/, ''),
    text: readFileSync(join(folder, name), 'utf8'),
  }))
  .sort((a, b) => (a.path < b.path ? -1 : 1));

/** Pages for which something is not so. */
const failing = (isFine: (text: string) => boolean): string[] =>
  pages.filter(({ text }) => !isFine(text)).map(({ path }) => path);

const linksIn = (text: string, part: RegExp): string =>
  [...(part.exec(text)?.[0] ?? '').matchAll(/<a\b[^>]*\shref="([^"]+)"/g)].map(([, link]) => link).join(' ');

test('Every page says that it is in British English (WCAG 2.2, 3.1.1)', () => {
  expect(pages.length).toBeGreaterThan(300);
  expect(failing((text) => /<html\b[^>]*\slang="en-GB"/.test(text))).toEqual([]);
});

test('Every page has a title of its own (2.4.2)', () => {
  // The pages that hold a package on a learning platform are a frame around the site: whoever opens them sees its title.
  const own = pages.filter(({ path }) => !path.startsWith('/launch/'));
  const titles = Map.groupBy(own, ({ text }) => /<title>([^<]*)<\/title>/.exec(text)?.[1] ?? '');
  const shared = [...titles].filter(([title, list]) => title === '' || list.length > 1);
  expect(shared.map(([title, list]) => `${title}: ${list.map(({ path }) => path).join(' ')}`)).toEqual([]);
});

test('Every page begins with a link to its main part, which is there (2.4.1)', () => {
  const isFine = (text: string) => {
    const first = /<a\b[^>]*>/.exec(text.slice(text.indexOf('<body')))?.[0] ?? '';
    const main = /<main\b[^>]*\bid="([^"]+)"/.exec(text)?.[1];
    return main !== undefined && first.includes(`href="#${main}"`);
  };
  // A page that is a frame for others has no main part of its own to skip to.
  expect(failing(isFine).filter((path) => !path.startsWith('/launch/'))).toEqual([]);
});

test('The menu is the same on every page, in the same order (3.2.3)', () => {
  const menus = new Set(pages.map(({ text }) => linksIn(text, /<nav\b[^>]*id="site-nav"[\s\S]*?<\/nav>/)));
  menus.delete('');
  expect(menus.size).toBe(1);
  expect([...menus][0]).toContain('/lessons/');
});

test('Every page ends with the same links to help and statements, in the same order (3.2.6)', () => {
  const feet = Map.groupBy(pages, ({ text }) =>
    linksIn(text, /<footer\b[^>]*class="site-foot"[\s\S]*?<\/footer>/),
  );
  const [full] = [...feet].sort(([, a], [, b]) => b.length - a.length);
  expect(full?.[0].split(' ').length).toBe(6);
  const others = pages.filter(
    ({ text, path }) =>
      linksIn(text, /<footer\b[^>]*class="site-foot"[\s\S]*?<\/footer>/) !== full?.[0] &&
      !path.startsWith('/launch/'),
  );
  expect(others.map(({ path }) => path)).toEqual([]);
});

test('No page forbids zooming (1.4.4) and none holds to one orientation (1.3.4)', () => {
  expect(failing((text) => !/user-scalable\s*=\s*no|maximum-scale/.test(text))).toEqual([]);
  const styles = globSync('**/*.css', { cwd: folder }).map((name) =>
    readFileSync(join(folder, name), 'utf8'),
  );
  expect(styles.length).toBeGreaterThan(0);
  expect(styles.filter((css) => /orientation:[^)]*\)[^{]*\{[^}]*rotate\(/.test(css))).toEqual([]);
});

test('The / key leads to the search until it is switched off (2.1.4)', async () => {
  const page = await openPage({ path: '/about/accessibility/' });
  const box = page.getByRole('checkbox', { name: /\/ key/ });
  await page.waitForLoadState('networkidle');
  await box.uncheck();
  expect(await page.getByRole('status').filter({ hasText: 'Switched off.' }).count()).toBe(1);
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('/');
  await page.reload();
  await page.waitForLoadState('networkidle');
  expect(await box.isChecked()).toBe(false);
  await page.keyboard.press('/');
  expect(new URL(page.url()).pathname).toBe('/about/accessibility/');
  await box.check();
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('/');
  await page.waitForURL(/\/search\//);
});
