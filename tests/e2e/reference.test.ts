import { expect, test } from 'vitest';
import { findKind } from '../../src/engine/parts/index.ts';
import { partPages } from '../../src/files/site/parts.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

const systems = systemPages();
const titles = '#layouts tbody tr:not([hidden]) th a';

test('The comparison lists every system, and a nickname or a choice narrows it', async () => {
  const page = await openPage({ path: '/systems/', ...LAPTOP });
  await expect.poll(() => page.getByRole('status').textContent()).toBe(`All ${systems.length} layouts`);
  expect(await page.locator(titles).count()).toBe(systems.length);

  await page.getByLabel('Name or nickname').fill('Y-plan');
  const called = systems.filter(({ spec, about }) =>
    [spec.title, ...(about?.alsoCalled ?? [])].join(' ').toLowerCase().includes('y-plan'),
  );
  expect(await page.locator(titles).allInnerTexts()).toEqual(called.map(({ spec }) => spec.title));

  await page.getByRole('button', { name: 'Clear' }).click();
  await page.getByLabel('Unvented cylinder').selectOption({ label: 'Suits as it is' });
  const suit = systems.filter(({ about }) => about?.unvented.suits === 'yes').map(({ spec }) => spec.title);
  await expect.poll(() => page.locator(titles).allInnerTexts()).toEqual(suit);
  expect(await page.getByRole('status').textContent()).toBe(`${suit.length} of ${systems.length} layouts`);
});

test('The comparison can be sorted by the number of valves', async () => {
  const page = await openPage({ path: '/systems/', ...LAPTOP });
  await page.getByLabel('Sort by').selectOption({ label: 'Number of valves' });
  const counts = await page
    .locator('#layouts tbody tr')
    .evaluateAll((rows) => rows.map((row) => Number((row as HTMLElement).dataset.valves)));
  expect(counts).toEqual([...counts].sort((a, b) => a - b));
});

test('With scripts switched off the comparison stands in full, without a form that does nothing', async () => {
  const page = await openPage({ path: '/systems/', scripts: false });
  expect(await page.locator(titles).count()).toBe(systems.length);
  expect(await page.locator('#choose').isVisible()).toBe(false);
});

test('On a phone every layout of the comparison is a card that says what each line is about', async () => {
  const page = await openPage({ path: '/systems/', ...PHONE });
  expect(await sidewaysScroll(page)).toBe(0);
  expect(await pastTheSides(page)).toEqual([]);
  const widths = await page
    .locator('#layouts tbody tr')
    .evaluateAll((rows) => rows.map((row) => row.getBoundingClientRect().width));
  for (const width of widths) expect(width).toBeGreaterThan(300);
  const label = await page
    .locator('#layouts td')
    .first()
    .evaluate((cell) => getComputedStyle(cell, '::before').content);
  expect(label).toBe('"Valves"');
});

test.each(['two-port-valve', 'mid-position-valve', 'cylinder-thermostat'])(
  'The truth table on the page of %s is that of the kind',
  async (name) => {
    const kind = findKind(name, {});
    const page = await openPage({ path: `/parts/${name}/` });
    const table = page.locator('table.truth').first();
    const contacts = await table
      .locator('th[data-contact]')
      .evaluateAll((cells) => cells.map((cell) => (cell as HTMLElement).dataset.contact));
    expect(contacts).toEqual(kind?.contacts?.map(({ id }) => id));
    const [input] = kind?.inputs ?? [];
    for (const row of await table.locator('tbody tr').all()) {
      const state = (await row.locator('th').textContent()) ?? '';
      const words = await row.locator('td').allInnerTexts();
      const now = { setting: input ? { [input.slot]: state } : {}, position: input ? '' : state };
      const expected = kind?.contacts?.map(({ closed }) => (closed(now) ? 'closed' : 'open'));
      expect(words.map((word) => word.split(/\s/).at(-1))).toEqual(expected);
    }
  },
);

test('A search for a terminal leads to its row on the page of its part', async () => {
  const page = await openPage({ path: '/search/?q=HW-OFF' });
  await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click();
  await page.waitForURL(/\/parts\/two-channel-programmer\/\?hl=[^#]+#terminal-hw-off$/);
  expect(await page.locator('tr:target').textContent()).toContain('HW-OFF');
});

test('The search needs no more than its own list, fetched once when it is first used', async () => {
  // The browser asks for the icon anew when the address changes.
  const page = await openPage({ path: '/search/', expected: /icon\.svg/ });
  await page.waitForLoadState('networkidle');
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.resourceType() === 'fetch') asked.push(new URL(request.url()).pathname);
  });
  const box = page.getByRole('searchbox');
  await box.fill('orange');
  await page.getByRole('list', { name: 'Results' }).getByRole('link').first().waitFor();
  expect(asked).toEqual(['/search/index.json']);
  await page.context().setOffline(true);
  await box.fill('S-plan');
  await expect.poll(() => page.locator('#found li').first().textContent()).toMatch(/Also called.*S-plan/s);
});

test('Every mistake on a system’s page says in words what it breaks', async () => {
  const page = await openPage({ path: '/systems/three-port/' });
  const says = await page.locator('[data-rule]').allInnerTexts();
  expect(says.length).toBeGreaterThan(15);
  for (const line of says) expect(line).toMatch(/^(Danger|Fault|Advice): [a-z]+ /);
});

// Some sixty pages, one after another.
test('No page of a system or of a part scrolls sideways on a phone', async () => {
  const page = await openPage({ path: '/systems/', ...PHONE });
  const paths = [
    ...systems.map(({ spec }) => `/systems/${spec.id}/`),
    '/parts/',
    ...partPages().map(({ kind }) => `/parts/${kind.kind}/`),
  ];
  for (const path of paths) {
    await page.goto(path);
    expect(await sidewaysScroll(page), path).toBe(0);
    expect(await pastTheSides(page), path).toEqual([]);
    expect(await smallTargets(page), path).toEqual([]);
  }
}, 180_000);
