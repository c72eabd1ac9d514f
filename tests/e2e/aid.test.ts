import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { outcomeAt } from '../../src/engine/diagnose/evidence.ts';
import { begin, go, standOf } from '../../src/engine/diagnose/replay.ts';
import { candidatesFor } from '../../src/files/callout-pack.ts';
import { layoutFile, makeLayout } from '../../src/files/layout-file.ts';
import { loadDoubleFaults } from '../../src/files/site/callouts.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { Inquiry, suspects } from '../../src/ui/aid/inquiry.ts';
import { chooseNext, momentAt } from '../../src/ui/aid/next.ts';
import { type Moment, withFind } from '../../src/ui/aid/note.ts';
import { sayAnswer, sayQuestion } from '../../src/ui/aid/say.ts';
import { symptomsOf } from '../../src/ui/aid/symptoms.ts';
import { must } from '../engine/support/must.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { sidewaysScroll, smallTargets } from './support/measure.ts';

const PHONE = { width: 360, height: 740, touch: true } as const;

/** The aid as the page of a system has it, for the test to know what the page must say. */
function aidOf(id: string): Inquiry {
  const page = must(systemPages().find(({ spec }) => spec.id === id));
  const layout = makeLayout(layoutFile(page));
  const { wires } = must(layout.right[0]);
  const doubles = loadDoubleFaults().filter(({ system }) => system === id);
  const all = candidatesFor(layout, must(layout.right[0]).id, doubles);
  return new Inquiry(layout.system, wires, suspects(layout.system, wires, all, 'worked'));
}

async function openAid(path: string, opening: Partial<Parameters<typeof openPage>[0]> = {}): Promise<Page> {
  const page = await openPage({ path: `/aid/${path}`, ...PHONE, ...opening });
  await page.locator('.aid[data-ready]').waitFor();
  return page;
}

const next = (page: Page) => page.getByRole('region', { name: 'Next best test' });
const where = (page: Page) => page.getByRole('region', { name: 'Where to look' });
const notes = (page: Page) => page.getByRole('region', { name: 'Your notes' });
const settled = (page: Page) => page.locator('#next [aria-busy="false"]').waitFor();

test('A visit to a three-port with a burnt-out switch goes from the complaint to the place, test by test', async () => {
  const inquiry = aidOf('three-port');
  const { system, wires, bench } = inquiry;
  const fault = must(inquiry.candidates.find(({ id }) => id === 'room-stat: call open'));
  const complaint = must(symptomsOf(system).find(({ says }) => says === 'No heating'));
  const callout = { system, wires, fault, complaints: [], found: complaint.settings, seed: 1 };
  let visit = begin(bench, callout);
  let moments: readonly Moment[] = [{ settings: complaint.settings, finds: complaint.finds }];

  const page = await openAid('three-port/');
  await page.getByText('I am not qualified').first().waitFor();
  await page.getByRole('radio', { name: /competent for dead tests/ }).check();
  await page.getByRole('button', { name: complaint.says }).click();

  for (let step = 0; step < 20; step++) {
    const here = must(moments.at(-1));
    const left = inquiry.left(moments);
    await settled(page);
    await where(page).getByText(`of ${inquiry.candidates.length} would explain`).waitFor();
    expect(await where(page).locator('.count b').textContent()).toBe(
      left.length === 1 ? '1 fault' : `${left.length} faults`,
    );
    const proposed = chooseNext(inquiry, moments, here, left, 'dead');
    if (!proposed) break;
    expect(await next(page).locator('.asks').textContent()).toBe(sayQuestion(system, proposed.test));
    if (proposed.danger === 'dead') {
      expect(await next(page).getByText('Isolate safely, and prove it dead').isVisible()).toBe(true);
    }
    expect(proposed.danger).not.toBe('live');
    visit = go(bench, callout, visit, { do: 'operate', settings: proposed.changes });
    const outcome = outcomeAt(visit.setup, standOf(visit), proposed.test);
    const answer = sayAnswer(system, proposed.test, outcome);
    await next(page).locator('.answer', { hasText: answer }).first().click();
    const there = withFind(momentAt(system, here, proposed.settings), { test: proposed.test, outcome });
    moments = there.settings === here.settings ? [...moments.slice(0, -1), there] : [...moments, there];
  }
  expect(inquiry.left(moments)).toContain(fault);
  expect(inquiry.groups(inquiry.left(moments))).toHaveLength(1);
  await next(page).getByText('One place is left.').waitFor();
  expect(await where(page).getByText(fault.says).isVisible()).toBe(true);
});

test.each(['two-two-ports-unvented/', 'gravity-two-port/', 'solar-coil-unvented/'])(
  'On the page of %s nobody is told to open or to measure unless they say that they are competent',
  async (path) => {
    const page = await openAid(path);
    const complaints = page.locator('details', { hasText: 'What is the complaint?' }).getByRole('button');
    for (let k = 0; k < (await complaints.count()); k++) {
      const name = await complaints.nth(k).textContent();
      await complaints.nth(k).click();
      for (let step = 0; step < 6; step++) {
        await settled(page);
        const says = (await next(page).textContent()) ?? '';
        expect(says, name ?? '').not.toMatch(
          /take .*cover off|Take the cover|two-pole|multimeter|continuity|ohms|isolate safely|reset|bypass/i,
        );
        const answers = next(page).locator('.answer');
        if ((await answers.count()) === 0) break;
        await answers.first().click();
      }
      expect(await page.getByRole('heading', { name: 'What do you measure?' }).count()).toBe(0);
      await page.getByRole('button', { name: 'Start again' }).click();
    }
  },
);

test('A visit is still there after a reload, and a link brings it to another device', async () => {
  const page = await openAid('three-port/');
  await page.getByRole('button', { name: 'Boiler never stops' }).click();
  await page.getByRole('group', { name: 'Does the pump run?' }).getByRole('button', { name: 'Yes' }).click();
  await notes(page).getByText('The pump runs.').waitFor();
  const { hash } = new URL(page.url());
  await page.reload();
  await page.locator('.aid[data-ready]').waitFor();
  await notes(page).getByText('The pump runs.').waitFor();
  // Without the end of the address the device's own note comes back.
  await page.goto('about:blank');
  await page.goto('/aid/three-port/');
  await notes(page).getByText('The pump runs.').waitFor();

  const other = await openAid(`three-port/${hash}`);
  await notes(other).getByText('The pump runs.').waitFor();
  await notes(other).getByText('The boiler fires.').waitFor();
  await settled(other);
  await other.getByRole('button', { name: 'Take out: The pump runs.' }).click();
  expect(await notes(other).getByText('The pump runs.').count()).toBe(0);
});

test('Findings that do not fit each other are named, and taking one out brings faults back', async () => {
  const page = await openAid(
    'three-port/#with=supply:off&works=boiler:yes&with=supply:on,hot-water:on,cylinder:calling&works=boiler:no',
  );
  await where(page).getByText('No single fault explains all of this.').waitFor();
  await where(page).locator('li', { hasText: 'The boiler fires.' }).getByRole('button').click();
  await where(page).getByText('would explain all of it').waitFor();
  expect(await notes(page).getByText('The boiler fires.').count()).toBe(0);
});

test('A link that is spoilt says what could not be read, and keeps the rest', async () => {
  const page = await openAid('three-port/#with=supply:on&works=boler:no&works=pump:no');
  await page.getByText('This system has no part “boler”: left out.').waitFor();
  await notes(page).getByText('The pump does not run.', { exact: true }).waitFor();
});

test('A reading is typed as it is said, and what cannot be read is answered with words that help', async () => {
  const page = await openAid('three-port/#who=dead&with=supply:off');
  const measure = page.getByRole('region', { name: 'What do you measure?' });
  await measure.getByLabel('From').selectOption('strip/2');
  await measure.getByLabel('To').selectOption('strip/3');
  await measure.getByLabel('Or type what it shows').fill('lots');
  await measure.getByRole('button', { name: 'Enter' }).click();
  await measure.getByText('“lots” cannot be read here.').waitFor();
  await measure.getByLabel('Or type what it shows').fill('0.4 ohm');
  await measure.getByRole('button', { name: 'Enter' }).click();
  await notes(page).getByText('Continuity: terminal 2 to terminal 3: beeps.').waitFor();
});

test('On paper stand the notes and where to look, and none of the buttons', async () => {
  const page = await openAid(
    'three-port/#with=supply:on,heating:on,room:calling&warms=radiators:no&works=pump:no',
  );
  await settled(page);
  await page.emulateMedia({ media: 'print' });
  expect(await notes(page).getByText('The pump does not run.', { exact: true }).isVisible()).toBe(true);
  expect(await notes(page).getByRole('heading', { name: 'Where to look' }).isVisible()).toBe(true);
  expect(await page.locator('.aid button:visible').count()).toBe(0);
  expect(await next(page).isVisible()).toBe(false);
});

test.each(['three-port/', 'six-zones/'])(
  'On a phone %s has tall targets, no sideways scroll and nothing against WCAG',
  async (path) => {
    const page = await openAid(`${path}#who=live&with=supply:on&works=pump:no`);
    await settled(page);
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await smallTargets(page)).toEqual([]);
    const low = await page
      .locator('.aid .tap:visible, .aid [role="switch"]:visible')
      .evaluateAll((taps) => taps.filter((tap) => tap.getBoundingClientRect().height < 48).length);
    expect(low).toBe(0);
    await seeNoViolation(page, path);
  },
);
