import { createHash } from 'node:crypto';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import type { Coursework } from '../../src/course/coursework/coursework.ts';
import type { Files } from '../../tools/package/pack.ts';
import { openPage } from './support/browser.ts';
import { LEARNER_12, LEARNER_2004, launch } from './support/lms.ts';
import { besideSite, lost, ODD, packageSite, serveExactly, unpacked } from './support/packages.ts';

/*
  The packages as a platform has them: the real site, built for packages, zipped, unpacked and served at a deep address
  by a server that knows nothing but the files' exact names.
*/

const course = { kind: 'course', title: 'Switched Live' } as const;
let files: Files;

beforeAll(() => {
  packageSite();
  files = unpacked('scorm-1.2', course);
}, 600_000);

test('Every address in every page, style and script of a package is relative and leads to a file of it', () => {
  expect([...files.keys()].filter((name) => name.endsWith('.html')).length).toBeGreaterThan(300);
  expect(lost(files)).toEqual([]);
});

test('Every script in a page is allowed by the policy of the page', () => {
  const barred: string[] = [];
  for (const [file, bytes] of files) {
    if (!file.endsWith('.html')) continue;
    const text = Buffer.from(bytes).toString();
    const policy = /http-equiv="content-security-policy" content="([^"]*)"/i.exec(text)?.[1] ?? '';
    for (const [, attributes = '', body = ''] of text.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)) {
      if (body === '' || /\bsrc=|application\/(?:ld\+)?json/.test(attributes)) continue;
      if (!policy.includes(`'sha256-${createHash('sha256').update(body).digest('base64')}'`))
        barred.push(file);
    }
  }
  expect(barred).toEqual([]);
});

test('A package keeps nothing for offline and asks nobody to install it', () => {
  expect(
    [...files.keys()].filter((name) =>
      /(?:^|\/)(?:sw\.js|manifest\.webmanifest|404\.html|_headers)$/.test(name),
    ),
  ).toEqual([]);
});

/** One page of every kind, and what wakes it. */
const kinds = [
  'index.html',
  'lessons/index.html',
  'lessons/why-the-three-port-is-not-enough/index.html',
  'jobs/index.html',
  'jobs/unvented-three-port/index.html',
  'bench/index.html',
  'drawings/three-port/index.html',
  'systems/three-port/index.html',
  'what-if/three-port/index.html',
  'aid/three-port/index.html',
  'callouts/index.html',
  'callouts/today/index.html',
  'callouts/visit/index.html',
  'practice/index.html',
  'progress/index.html',
  'search/index.html?q=cylinder',
  'calculators/index.html',
  'glossary/index.html',
];

test('Pages of every kind wake and fetch what they need, and miss nothing', async () => {
  const served = await serveExactly(files);
  onTestFinished(served.close);
  const at = (path: string) => `${served.origin}${ODD}${path}`;
  const expected = new RegExp(`^request to another site: ${served.origin}/`);
  const page = await openPage({ path: at(kinds[0] ?? ''), expected });
  const away: string[] = [];
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol === 'http:' && !url.href.startsWith(at('')) && url.pathname !== '/favicon.ico')
      away.push(url.href);
  });
  for (const kind of kinds) {
    await page.goto(at(kind), { waitUntil: 'load' });
    await page.mouse.move(300, 300);
    for (const island of await page.locator('astro-island').all())
      await island
        .locator('button:visible, input:visible, select:visible')
        .first()
        .focus({ timeout: 300 })
        .catch(() => {});
    await page.waitForLoadState('networkidle');
  }
  expect({ missed: served.missed, away }).toEqual({ missed: [], away: [] });
}, 240_000);

test('Walking about works: search, a result, home, Continue, a question, a fault searched for in the background', async () => {
  const served = await serveExactly(files);
  onTestFinished(served.close);
  const at = (path: string) => `${served.origin}${ODD}${path}`;
  const page = await openPage({
    path: at('lessons/index.html'),
    expected: new RegExp(`^request to another site: ${served.origin}/`),
  });
  // Keys are listened to once the page stands.
  await page.waitForLoadState('networkidle');
  await page.keyboard.press('/');
  await page.waitForURL(at('search/index.html#q'));
  await page.locator('#q').fill('energy cut-out');
  await page
    .locator('main a[href*="index.html"]')
    .filter({ hasText: /cut-out/i })
    .first()
    .click();
  await page.waitForURL(
    (url) =>
      url.href.startsWith(at('')) && url.pathname.endsWith('/index.html') && !url.pathname.includes('search'),
  );
  expect(await page.locator('h1').count()).toBe(1);

  await page.getByRole('link', { name: 'Switched Live, home' }).click();
  await page.waitForURL((url) => url.href.startsWith(at('index.html')));
  await page.locator('a[data-continue]:visible').first().click();
  await page.waitForURL((url) => url.href.startsWith(at('lessons/')) && url.pathname.endsWith('/index.html'));
  // The header knows where the reader is.
  expect(await page.locator('.site-nav a[aria-current]').first().textContent()).toContain('Course');

  await page.goto(at('what-if/unvented-three-port/index.html'));
  await page.locator('main button:visible').first().click();
  await page.waitForLoadState('networkidle');
  expect(served.missed).toEqual([]);
}, 120_000);

const coursework: Coursework = {
  id: 'e2e',
  title: 'Cut-outs & valves',
  variants: 'own',
  seed: 5,
  tasks: [{ kind: 'lesson', id: 'read', lesson: 'the-cut-out', attempts: 3, hints: 3 }],
};

test.each([
  ['scorm-1.2', LEARNER_12, course],
  ['scorm-2004', LEARNER_2004, course],
  ['scorm-1.2', LEARNER_12, { kind: 'coursework', coursework }],
  ['scorm-2004', LEARNER_2004, { kind: 'coursework', coursework }],
] as const)('A package for %s starts in a platform', async (standard, before, work) => {
  const packed = unpacked(standard, work);
  const { site, cmi, calls, breaches } = await launch({
    standard,
    // The package's own setting comes after this one and so takes its place.
    work: { kind: 'course', title: 'not this one' },
    before,
    launch: `${ODD}launch/index.html`,
    prepare: (context) => besideSite(context, packed),
  });
  await site.locator('main').waitFor();
  const says = work.kind === 'course' ? /Wire the strip/i : /Cut-outs & valves/;
  await expect.poll(() => site.locator('main').textContent()).toMatch(says);
  await expect.poll(calls).toContainEqual(expect.stringMatching(/^(LMSInitialize|Initialize)\b/));
  const status = async () => {
    const now = (await cmi()) as { core?: { lesson_status?: string }; completion_status?: string };
    return now.core?.lesson_status ?? now.completion_status;
  };
  await expect.poll(status).toBe('incomplete');
  expect(await breaches()).toEqual([]);
});
