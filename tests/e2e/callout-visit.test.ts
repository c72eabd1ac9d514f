import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { makeBench } from '../../src/engine/diagnose/bench.ts';
import { allCandidates } from '../../src/engine/diagnose/callout.ts';
import { replay } from '../../src/engine/diagnose/replay.ts';
import { makeCalloutFrom } from '../../src/files/callout-pack.ts';
import { loadCallouts } from '../../src/files/site/callouts.ts';
import { siteShelf } from '../../src/files/site/shelf.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { click, press, type Touching, tap } from './support/item.ts';
import { LAPTOP, PHONE } from './support/job.ts';

/** A cylinder thermostat that is welded on its call: see content/callouts. */
const ID = 'the-tank-that-never-stops';
const path = `/callouts/${ID}/`;

async function openVisit(opening: Omit<Parameters<typeof openPage>[0], 'path'> & { path?: string } = LAPTOP) {
  const page = await openPage({ path, ...opening });
  await page.locator('.visit[data-ready]').waitFor();
  return page;
}

const notes = (page: Page) => page.getByRole('region', { name: 'Notebook' }).getByRole('listitem');
const step = (page: Page, id: string) => page.locator(`[data-step="${id}"]`);
const control = (page: Page, id: string) => page.locator(`[data-input="${id}"]`);
const look = (page: Page, key: string) => page.locator(`[data-look="${key}"]`);
const cover = (page: Page, name: string) => page.getByRole('button', { name: `Take the cover off: ${name}` });
const warning = (page: Page) => page.getByRole('alert').getByRole('region', { name: 'Unsafe' });
const reading = (page: Page) => page.locator('[data-reading]').getAttribute('data-reading');
const STEPS = ['identify spur', 'isolate', 'lock', 'prove', 'L-N', 'L-E', 'N-E', 'prove again'];

async function isolate(page: Page, touch: Touching) {
  for (const id of STEPS) await touch(step(page, id));
}

/** Puts both probes on, the way the hand does it. */
async function probe(page: Page, ends: readonly [string, string], touch: Touching) {
  for (const end of ends) await touch(page.locator(`button[data-terminal="${end}"]`));
}

async function sayWelded(page: Page, touch: Touching) {
  await touch(page.getByRole('radio', { name: 'A part has failed' }));
  await page.getByLabel('Which part?').selectOption({ label: 'Cylinder thermostat' });
  await touch(page.getByRole('radio', { name: 'Is welded on its call' }));
  await touch(page.getByRole('button', { name: 'That is what is wrong' }));
}

const result = (page: Page) => page.locator('[data-result="ready"]');

/** The whole visit: try, look, isolate, open, measure, say. */
async function visit(page: Page, touch: Touching) {
  expect(await page.getByText('Set the controls as the customer says').isVisible()).toBe(true);
  await touch(look(page, 'works boiler'));
  expect(await look(page, 'works boiler').textContent()).toContain('fires');
  await touch(control(page, 'cylinder'));
  expect(await look(page, 'works boiler').textContent()).toContain('was: fires');
  await touch(control(page, 'cylinder'));
  await touch(look(page, 'works boiler'));
  await isolate(page, touch);
  expect(await page.getByText('Proved dead.').first().isVisible()).toBe(true);
  await touch(cover(page, 'Cylinder thermostat'));
  await touch(page.getByRole('button', { name: 'Multimeter: continuity' }));
  // The cylinder is satisfied: a sound thermostat joins COM to SAT, and not to CALL (common practice).
  await probe(page, ['cyl-stat/COM', 'cyl-stat/CALL'], touch);
  await expect.poll(() => reading(page)).toBe('true');
  await touch(page.getByRole('button', { name: 'Probes off' }));
  await probe(page, ['cyl-stat/COM', 'cyl-stat/SAT'], touch);
  await expect.poll(() => reading(page)).toBe('false');
  expect(await notes(page).first().textContent()).toContain(
    'Multimeter on continuity, cylinder thermostat COM to cylinder thermostat SAT: silent: not joined.',
  );
  await sayWelded(page, touch);
  await result(page).waitFor();
  expect(await result(page).textContent()).toContain('The cylinder thermostat is welded on its call');
  expect(await result(page).textContent()).not.toContain('You said');
  expect(await result(page).textContent()).toContain('Every step was safe.');
}

test('With a mouse on a laptop: the whole visit, from the customer’s words to the result', async () => {
  const page = await openVisit();
  expect(await page.getByText('so hot that it steams').isVisible()).toBe(true);
  await visit(page, click);
});

test('With a finger on a phone: the same visit, in one column', async () => {
  const page = await openVisit(PHONE);
  await visit(page, tap);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
});

test('With keys alone: the same visit', async () => {
  const page = await openVisit();
  await visit(page, press);
});

test('Every reading on the page is the one that the engine gives for the same acts', async () => {
  const file = loadCallouts().find(({ id }) => id === ID);
  if (!file) throw new Error(`There is no callout ${ID}.`);
  const callout = makeCalloutFrom(siteShelf().layout(file.system), file);
  const page = await openVisit();
  for (const look of await page.locator('[data-look]').all()) await look.click();
  const keys = await page
    .locator('[data-look]')
    .evaluateAll((all) => all.map((one) => one.dataset.look ?? ''));
  const played = replay(
    makeBench(callout.system),
    callout,
    keys.map((key) => {
      const [kind, part] = key.split(' ') as ['works' | 'warms' | 'stands', string];
      return { do: 'test', test: { kind, part } };
    }),
  );
  const words: Record<string, readonly [string, string]> = {
    boiler: ['fires', 'does not fire'],
    pump: ['runs', 'does not run'],
    coil: ['gets warm', 'stays cold'],
    radiators: ['gets warm', 'stays cold'],
  };
  for (const { act, outcome } of played.entries) {
    if (act.do !== 'test' || act.test.kind === 'reads') continue;
    const { kind, part } = act.test;
    const says =
      kind === 'stands'
        ? callout.system.spec.parts[part]?.positions?.[String(outcome)]
        : words[part]?.[outcome ? 0 : 1];
    expect(await look(page, `${kind} ${part}`).textContent(), part).toContain(says ?? 'words for it');
  }
  expect(await notes(page).count()).toBe(keys.length);
});

test('A cover taken off with the supply on is told at once, with what it could have done, and stands in the result', async () => {
  const page = await openVisit();
  await cover(page, 'Strip').or(cover(page, 'Terminal strip')).click();
  await warning(page).waitFor();
  expect(await warning(page).textContent()).toContain('You took a cover off with the supply on.');
  expect(await warning(page).textContent()).toContain('Behind the cover are bare screws');
  await seeNoViolation(page, 'A visit with a breach');
  await page.getByRole('button', { name: 'I understand' }).click();
  expect(await warning(page).count()).toBe(0);
  expect(await notes(page).first().textContent()).toContain(
    'Unsafe: You took a cover off with the supply on.',
  );
  await sayWelded(page, click);
  await result(page).waitFor();
  expect(await page.getByRole('region', { name: 'What was not safe' }).textContent()).toContain(
    'You took a cover off with the supply on.',
  );
});

test('Continuity on a live circuit gives no reading, and is told', async () => {
  const page = await openVisit();
  await cover(page, 'Cylinder thermostat').click();
  await page.getByRole('button', { name: 'I understand' }).click();
  await page.getByRole('button', { name: 'Multimeter: continuity' }).click();
  await probe(page, ['cyl-stat/COM', 'cyl-stat/CALL'], click);
  await warning(page).waitFor();
  expect(await warning(page).textContent()).toContain('You tested continuity on a live circuit');
  expect(await reading(page)).toBe('refused');
});

test('A step left out of safe isolation is told when the hand goes in', async () => {
  const page = await openVisit();
  for (const id of STEPS.filter((one) => one !== 'prove again')) await step(page, id).click();
  await cover(page, 'Cylinder thermostat').click();
  expect(await warning(page).count()).toBe(0);
  await page.getByText('Change a part for a new one').click();
  await page
    .locator('details', { hasText: 'Change a part' })
    .getByRole('combobox')
    .selectOption({ label: 'Cylinder thermostat' });
  await page.getByRole('button', { name: 'Change it' }).click();
  await warning(page).waitFor();
  expect(await warning(page).textContent()).toContain('You did not prove the tester again');
});

test('A visit comes back after a reload as it was left, and the result stays', async () => {
  const page = await openVisit();
  await look(page, 'works boiler').click();
  await isolate(page, click);
  await cover(page, 'Cylinder thermostat').click();
  const before = await notes(page).allTextContents();
  await page.reload();
  await page.locator('.visit[data-ready]').waitFor();
  expect(await notes(page).allTextContents()).toEqual(before);
  expect(await page.getByText('Proved dead.').first().isVisible()).toBe(true);
  expect(await page.getByRole('button', { name: 'Put the cover on: Cylinder thermostat' }).isVisible()).toBe(
    true,
  );
  await sayWelded(page, click);
  await result(page).waitFor();
  await page.reload();
  await result(page).waitFor();
  await page.getByRole('button', { name: 'Visit again from the door' }).click();
  expect(await page.getByText('Everything you do is written down here').isVisible()).toBe(true);
});

test('A wrong diagnosis is told what it was, and what the learner said', async () => {
  const page = await openVisit();
  await page.getByRole('radio', { name: 'A wire is broken or landed wrong' }).click();
  await page.getByLabel('A part that the wire goes to').selectOption({ label: 'Pump' });
  await page.getByLabel('Which wire').selectOption({ label: 'Pump L to terminal 6' });
  await page.getByRole('radio', { name: 'Its end for terminal 6 is landed on another terminal' }).click();
  await page.getByLabel('Where is that end landed?').selectOption({ label: 'Terminal 1' });
  const said = 'The wire from pump L to terminal 6 is landed on terminal 1';
  await page.getByText(`You say: ${said}.`).waitFor();
  await page.getByRole('button', { name: 'That is what is wrong' }).click();
  await result(page).waitFor();
  expect(await result(page).textContent()).toContain('That is not what is wrong');
  expect(await result(page).textContent()).toContain(said);
});

test('On the largest system every one of its faults can be said: a wire there is found by its ends', async () => {
  const file = loadCallouts().find(({ system }) => system === 'six-zones');
  if (!file) throw new Error('There is no callout to six-zones.');
  const { system, right } = siteShelf().layout('six-zones');
  expect(allCandidates(system, right[0]?.wires ?? []).length).toBeGreaterThan(2000);
  const page = await openVisit({ ...LAPTOP, path: `/callouts/${file.id}/` });
  await page.getByRole('radio', { name: 'A wire is broken or landed wrong' }).click();
  const parts = page.getByLabel('A part that the wire goes to');
  expect(await parts.locator('option').count()).toBeGreaterThan(system.parts.length / 2);
  await parts.selectOption({ index: 5 });
  await page.getByLabel('Which wire').selectOption({ index: 1 });
  await page.getByRole('radio', { name: 'It is broken, or off its terminal' }).click();
  await page.getByText(/You say: The wire from .* is broken\./).waitFor();
});

test('A callout by its address is made afresh: the customer speaks, and the controls answer', async () => {
  const page = await openVisit({ ...LAPTOP, path: '/callouts/visit/#callout/three-port/7/1' });
  expect((await page.locator('blockquote').textContent())?.length).toBeGreaterThan(20);
  await page.getByRole('button', { name: 'Look at everything' }).click();
  expect(await notes(page).count()).toBeGreaterThan(3);
});

test('An address that names no callout says so', async () => {
  const page = await openPage({ ...LAPTOP, path: '/callouts/visit/#callout/nowhere', expected: /404/ });
  await page.getByText('This callout could not be opened.').waitFor();
});

/** At the door, and with everything unfolded that a cover hides. */
async function seeItGood(opening: typeof LAPTOP | typeof PHONE) {
  const page = await openVisit(opening);
  await seeNoViolation(page, 'At the door');
  await page.getByRole('button', { name: 'Look at everything' }).click();
  await isolate(page, click);
  await cover(page, 'Cylinder thermostat').click();
  await page.getByText('Lift a wire').click();
  await page.getByRole('radio', { name: 'A part has failed' }).click();
  await seeNoViolation(page, 'With a cover off');
}

test('The page of a visit keeps to WCAG 2.2 AA on a laptop', () => seeItGood(LAPTOP));

test('The page of a visit keeps to WCAG 2.2 AA on a phone', () => seeItGood(PHONE));
