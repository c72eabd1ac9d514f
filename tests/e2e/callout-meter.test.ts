import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { makeBench } from '../../src/engine/diagnose/bench.ts';
import { breachSays } from '../../src/engine/diagnose/breach.ts';
import type { Callout } from '../../src/engine/diagnose/callout.ts';
import { type Instrument, read } from '../../src/engine/diagnose/instrument.ts';
import { begin, standOf } from '../../src/engine/diagnose/replay.ts';
import { makeCalloutFrom } from '../../src/files/callout-pack.ts';
import { layoutFile, makeLayout } from '../../src/files/layout-file.ts';
import { loadCallouts } from '../../src/files/site/callouts.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { type Opening, openPage } from './support/browser.ts';
import { fingerDrag } from './support/finger.ts';
import { LAPTOP, PHONE, terminal } from './support/job.ts';
import { pastTheSides, sidewaysScroll, smallTargets } from './support/measure.ts';

/** A cylinder thermostat that has welded: supply and hot water are on, so several cores are live and others float. */
const TANK = 'the-tank-that-never-stops';
/** Live, floating and neutral on the strip of that callout. */
const [LIVE, FLOATING, NEUTRAL] = ['strip/6', 'strip/2', 'strip/9'] as const;

function calloutOf(id: string): Callout {
  const file = loadCallouts().find((one) => one.id === id);
  const page = systemPages().find(({ spec }) => spec.id === file?.system);
  if (!file || !page) throw new Error(`There is no callout ${id}.`);
  return makeCalloutFrom(makeLayout(layoutFile(page)), file);
}

/** What the engine says an instrument shows on arrival. */
function expected(instrument: Instrument, between: readonly [string, string]) {
  const callout = calloutOf(TANK);
  const visit = begin(makeBench(callout.system), callout);
  return read(visit.setup, standOf(visit), instrument, between);
}

async function visit(id: string, opening: Partial<Opening> = LAPTOP): Promise<Page> {
  const page = await openPage({ ...LAPTOP, ...opening, path: `/callouts/${id}/` });
  await page.locator('[data-ready]').waitFor();
  return page;
}

const cover = (page: Page, name: string) =>
  page.getByRole('button', { name: `Take the cover off: ${name}`, exact: true });
/** Takes a cover off with the supply on, as a beginner would, and puts away what is told about it. */
async function uncover(page: Page, name: string): Promise<void> {
  await cover(page, name).click();
  await page.getByRole('button', { name: 'I understand' }).click();
}
const handle = (page: Page, lead: 'Red' | 'Black') =>
  page.getByRole('button', { name: new RegExp(`^${lead} probe`) });
const range = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Instrument and range' }).getByRole('button', { name });
const meter = (page: Page) => page.getByRole('region', { name: 'Meter' });
const says = (page: Page) => meter(page).getByRole('status');
const shown = (page: Page) => says(page).getAttribute('data-reading');
const seesReading = (page: Page, instrument: Instrument, between: readonly [string, string]) =>
  expect.poll(() => shown(page)).toBe(String(expected(instrument, between)));

async function middle(of: Locator) {
  const box = await of.boundingBox();
  if (!box) throw new Error(`${of} is not on the page`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function dragProbe(page: Page, lead: 'Red' | 'Black', to: string): Promise<void> {
  await terminal(page, to).scrollIntoViewIfNeeded();
  const from = await middle(handle(page, lead));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const at = await middle(terminal(page, to));
  await page.mouse.move(at.x, at.y, { steps: 6 });
  await page.mouse.up();
}

test('Both probes go on by mouse drag, and the lamps show what the engine works out', async () => {
  const page = await visit(TANK);
  await uncover(page, 'Terminal strip');
  await dragProbe(page, 'Red', LIVE);
  expect(await shown(page)).toBeNull();
  await dragProbe(page, 'Black', NEUTRAL);
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
  expect(await says(page).textContent()).toContain('Lamps light up to 230 volts');
  expect(await terminal(page, LIVE).getAttribute('aria-label')).toContain('red probe on it');
  // Both leads hang from the meter to their terminals.
  expect(await page.locator('[data-lead]').count()).toBe(2);
  // Dragged from its terminal and let go beside all others, a probe is off.
  const from = await middle(terminal(page, LIVE));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 80, 4, { steps: 5 });
  await page.mouse.up();
  expect(await terminal(page, LIVE).getAttribute('aria-pressed')).toBe('false');
  expect(await page.locator('[data-lead]').count()).toBe(1);
});

test('On a phone probes go on by tap, and the meter stays in the window at every terminal', async () => {
  const page = await visit(TANK, PHONE);
  await uncover(page, 'Terminal strip');
  await terminal(page, LIVE).tap();
  await terminal(page, NEUTRAL).tap();
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
  const ways = page.locator('[data-part="strip"] .spot');
  for (const way of await ways.all()) {
    await way.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const name = await way.getAttribute('data-terminal');
    const box = await says(page).boundingBox();
    expect(box && box.y > 0 && box.y + box.height <= PHONE.height, name ?? '').toBe(true);
    // Nothing of the bar lies over the terminal that is to be touched.
    const free = await way.evaluate((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return element.contains(document.elementFromPoint(x + width / 2, y + height / 2));
    });
    expect(free, name ?? '').toBe(true);
  }
  // A tap on a probe takes it off.
  await terminal(page, LIVE).tap();
  expect(await terminal(page, LIVE).getAttribute('aria-pressed')).toBe('false');
  expect(await shown(page)).toBeNull();
});

test('A finger drags a probe from the bar at the foot to a terminal', async () => {
  const page = await visit(TANK, PHONE);
  await uncover(page, 'Terminal strip');
  await terminal(page, LIVE).evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const from = await middle(handle(page, 'Red'));
  const to = await middle(terminal(page, LIVE));
  // The tip stands above the finger, where it can be seen.
  await fingerDrag(page, from, { x: to.x, y: to.y + 46 });
  await expect.poll(() => terminal(page, LIVE).getAttribute('aria-pressed')).toBe('true');
  expect(await handle(page, 'Red').textContent()).toContain('strip 6');
});

test('With the keyboard alone a cover comes off and both probes go on', async () => {
  const page = await visit(TANK);
  await cover(page, 'Terminal strip').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'I understand' }).press('Enter');
  await page.getByRole('button', { name: 'Put the cover on: Terminal strip' }).focus();
  const first = terminal(page, 'strip/1');
  for (let press = 0; press < 6 && !(await first.evaluate((e) => e === document.activeElement)); press++)
    await page.keyboard.press('Tab');
  for (let down = 1; down < 6; down++) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('r');
  for (let down = 6; down < 9; down++) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('b');
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
  // Red stays in the hand: Enter carries it on to the next terminal.
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await seesReading(page, 'tester', ['strip/1', NEUTRAL]);
  await page.keyboard.press('Delete');
  expect(await shown(page)).toBeNull();
});

test('Two lists put the probes on as well, and offer nothing that is under a cover', async () => {
  const page = await visit(TANK);
  await page.getByText('Choose from a list').click();
  expect(await page.getByLabel('Red probe on').isDisabled()).toBe(true);
  await uncover(page, 'Terminal strip');
  const ends = await page
    .getByLabel('Red probe on')
    .locator('option')
    .evaluateAll((all) => all.map((option) => (option as HTMLOptionElement).value).filter(Boolean));
  expect(ends.every((end) => end.startsWith('strip/'))).toBe(true);
  await page.getByLabel('Red probe on').selectOption(LIVE);
  await page.getByLabel('Black probe on').selectOption(NEUTRAL);
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
});

test('Under a cover there is no terminal to probe, and a cover put back takes the probes off', async () => {
  const page = await visit(TANK);
  expect(await page.locator('.spot').count()).toBe(0);
  await uncover(page, 'Terminal strip');
  expect(await page.locator('.spot').count()).toBe(10);
  expect(await terminal(page, 'programmer/L').count()).toBe(0);
  await terminal(page, LIVE).click();
  await terminal(page, NEUTRAL).click();
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
  await page.getByRole('button', { name: 'Put the cover on: Terminal strip' }).click();
  expect(await page.locator('.spot').count()).toBe(0);
  expect(await page.locator('[data-lead]').count()).toBe(0);
  expect(await shown(page)).toBeNull();
});

test('A floating core has volts on the multimeter and none on the two-pole tester', async () => {
  // Unloaded, 20 to 110 V is what people meet; loaded, next to nothing (common practice).
  const volts = expected('volts', [FLOATING, NEUTRAL]);
  expect(volts).toBeGreaterThan(20);
  expect(volts).toBeLessThan(110);
  expect(expected('tester', [FLOATING, NEUTRAL])).toBe(0);
  const page = await visit(TANK);
  await uncover(page, 'Terminal strip');
  await range(page, 'Multimeter: volts').click();
  await terminal(page, FLOATING).click();
  await terminal(page, NEUTRAL).click();
  await seesReading(page, 'volts', [FLOATING, NEUTRAL]);
  await page.getByText('Are these volts real?').click();
  expect(await meter(page).textContent()).toContain('ghost volts');
  // The other instrument reads nothing until its probes are put on again: on the same two terminals with one press.
  await range(page, 'Two-pole tester').click();
  expect(await shown(page)).toBeNull();
  await page.getByRole('button', { name: 'Back on strip 2 and strip 9' }).click();
  await seesReading(page, 'tester', [FLOATING, NEUTRAL]);
  expect(await says(page).textContent()).toContain('No lamp lights');
});

test('Continuity on a live circuit gives no reading, and the breach is told at once', async () => {
  const page = await visit(TANK);
  await uncover(page, 'Terminal strip');
  await range(page, 'Multimeter: continuity').click();
  await terminal(page, LIVE).click();
  await terminal(page, NEUTRAL).click();
  await expect.poll(() => shown(page)).toBe('refused');
  expect(await says(page).textContent()).toContain(breachSays['continuity-live']);
  const alerts = await page.getByRole('alert').allTextContents();
  expect(alerts.join(' ')).toContain(breachSays['continuity-live']);
});

test('Once a control was worked a reading is no reading any more, until it is taken again', async () => {
  const page = await visit(TANK);
  await uncover(page, 'Terminal strip');
  await terminal(page, LIVE).click();
  await terminal(page, NEUTRAL).click();
  await seesReading(page, 'tester', [LIVE, NEUTRAL]);
  await page.locator('[data-input="supply"]').first().click();
  expect(await shown(page)).toBeNull();
  await meter(page).getByRole('button', { name: 'Read again' }).click();
  // With the supply off nothing is live.
  await expect.poll(() => shown(page)).toBe('0');
});

test('A wire landed wrong lies where it was landed', async () => {
  const id = 'one-or-the-other';
  const { fault, system } = calloutOf(id);
  const [first] = fault.misplaced;
  if (!first) throw new Error(`${id} has no wire landed wrong.`);
  const now = first.landed.find((end) => end.startsWith('strip/')) ?? '';
  const lead = first.landed.find((end) => end !== now) ?? '';
  const short = system.parts.find((part) => lead.startsWith(`${part.id}/`))?.short;
  const page = await visit(id);
  await uncover(page, 'Terminal strip');
  expect(await terminal(page, now).getAttribute('aria-label')).toContain(
    `${lead.slice(lead.indexOf('/') + 1)} lead of ${short}`,
  );
});

test.each([320, 360])(
  'With every cover off nothing makes a window of %i px scroll sideways',
  async (width) => {
    const page = await visit(TANK, { ...PHONE, width });
    // With the supply off a cover is no danger to whoever is not yet in.
    await page.locator('[data-input="supply"]').tap();
    const covers = page.getByRole('button', { name: /^Take the cover off/ });
    for (let left = await covers.count(); left > 0; left--) {
      await covers.first().tap();
      const told = page.getByRole('button', { name: 'I understand' });
      if (await told.isVisible()) await told.tap();
    }
    expect(await covers.count()).toBe(0);
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await pastTheSides(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
  },
);
