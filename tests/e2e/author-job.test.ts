import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { parseJob } from '../../src/files/job.ts';
import {
  chooseFile,
  openEditor,
  openOnPhone,
  problems,
  saveButton,
  saved,
  seeSound,
} from './support/author.ts';
import { openPage } from './support/browser.ts';
import { jobOf, keysOf, rightWires, terminal, WHOLE, wireKey } from './support/job.ts';
import { judgeButton, verdict } from './support/verdict.ts';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const findings = (page: Page) => page.getByRole('region', { name: 'What the engine says' });

/** A job with neutrals and earths landed, made by mouse and typing. */
async function makeJob(page: Page) {
  await page.getByRole('button', { name: 'Start a new job' }).click();
  await field(page, 'System').selectOption(WHOLE);
  await page.getByRole('button', { name: 'Only neutrals and earths' }).click();
  await field(page, 'Title').fill('The lines are yours');
  await field(page, 'One line for lists').fill('Neutrals and earths are in.');
  await field(page, 'Brief').fill('Land every line.\n\nProve dead first.');
}

test('A tutor makes a job, sees that it can be solved, saves it as YAML and tries it', async () => {
  const page = await openEditor('job');
  await makeJob(page);
  await expect.poll(() => findings(page).textContent()).toContain('It can be solved.');
  expect(await problems(page).count()).toBe(0);
  const { name, yaml } = await saved(page, () => saveButton(page).click());
  expect(name).toBe('the-lines-are-yours.yaml');
  expect(yaml.split('\n')[0]).toMatch(/^# yaml-language-server: \$schema=http.*\/schema\/job\.json$/);
  const job = parseJob(yaml, name);
  expect(job).toMatchObject({
    id: 'the-lines-are-yours',
    system: WHOLE,
    brief: 'Land every line.\n\nProve dead first.',
  });
  const right = keysOf(rightWires());
  for (const wire of job.gives?.wires ?? []) expect(right).toContain(wireKey(wire));

  await page.getByRole('link', { name: 'Try it as a learner' }).click();
  await page.getByRole('heading', { name: 'The lines are yours' }).waitFor();
  const given = keysOf(job.gives?.wires ?? []).length;
  await expect.poll(() => page.locator('.wire').count()).toBe(given);
  await judgeButton(page).click();
  await expect.poll(() => verdict(page).textContent()).toContain('Not yet');
  await page.getByRole('link', { name: 'Back to the job editor' }).click();
  await expect.poll(() => field(page, 'Title').inputValue()).toBe('The lines are yours');
});

test('A draft outlasts a reload; undo takes back a field at a time, and a deleted draft comes back', async () => {
  const page = await openEditor('job');
  await makeJob(page);
  await field(page, 'Title').fill('Another title');
  await page.keyboard.press('Control+z');
  expect(await field(page, 'Title').inputValue()).toBe('The lines are yours');
  await page.keyboard.press('Control+y');
  expect(await field(page, 'Title').inputValue()).toBe('Another title');
  await page.reload();
  await expect.poll(() => field(page, 'Title').inputValue()).toBe('Another title');
  await page.getByRole('button', { name: 'Delete' }).click();
  await page.getByRole('button', { name: 'Start a new job' }).waitFor();
  await page.getByRole('button', { name: /^Bring back/ }).click();
  await expect.poll(() => field(page, 'Title').inputValue()).toBe('Another title');
});

test('Wires ticked, landed on the board and taken out are one wiring, and the engine judges it at once', async () => {
  const page = await openEditor('job');
  await page.getByRole('button', { name: 'Start a new job' }).click();
  await field(page, 'System').selectOption(WHOLE);
  await page.getByRole('radio', { name: 'Find and put right' }).check();
  await page.getByRole('button', { name: 'Take all its wires' }).click();
  await expect.poll(() => findings(page).textContent()).toContain('It is right already');
  await expect
    .poll(() => problems(page).allInnerTexts())
    .toContainEqual(expect.stringContaining('one that is accepted as it is'));
  await page.getByRole('checkbox', { name: 'Boiler SL' }).uncheck();
  await expect.poll(() => findings(page).textContent()).toContain('Rejected at the start, as it should be.');
  await page.getByRole('button', { name: 'Board', exact: true }).click();
  const stage = page.locator('.stage.board');
  await stage.locator('[data-terminal="boiler/SL"]').click();
  await stage.locator('[data-terminal="strip/9"]').click();
  await page.getByRole('button', { name: 'Tick list' }).click();
  // Landed by hand where the known wiring has nothing.
  await expect
    .poll(() => page.locator('.ticks label.added').allInnerTexts())
    .toEqual([expect.stringContaining('Boiler SL')]);
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.locator('.ticks label.added').count()).toBe(0);
});

test('A job of the course and a file open as drafts of their own; a file that is none says where it breaks', async () => {
  const page = await openEditor('job');
  await page.getByRole('button', { name: 'Start from a job of the course' }).click();
  await page.getByLabel('Which job?').fill('gravity three-port convert');
  await page.getByRole('button', { name: /Convert gravity hot water to a three-port/ }).click();
  const { job } = jobOf('gravity-to-three-port');
  await expect.poll(() => field(page, 'Brief').inputValue()).toBe(job.brief);
  await expect.poll(() => findings(page).textContent()).toContain('Rejected at the start');
  const { yaml } = await saved(page, () => saveButton(page).click());
  expect(parseJob(yaml, 'x')).toEqual(job);

  await chooseFile(page, 'mine.yaml', yaml.replace('summary:', 'sumary:'));
  await expect
    .poll(() => page.getByRole('alert').textContent())
    .toMatch(/mine\.yaml.*did you mean "summary"/);
  await page.getByRole('button', { name: 'Close' }).click();
  await chooseFile(page, 'mine.yaml', yaml.replace(/^title: .*/m, 'title: From a file'));
  await expect.poll(() => field(page, 'Title').inputValue()).toBe('From a file');
  expect(await page.getByLabel('Draft', { exact: true }).locator('option').allInnerTexts()).toEqual([
    job.title,
    'From a file',
  ]);
});

test('The link opens the job for a learner, and in the editor for another tutor', async () => {
  const page = await openEditor('job', {
    prepare: (context) => context.grantPermissions(['clipboard-read', 'clipboard-write']),
  });
  await makeJob(page);
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText('Link copied.').waitFor();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const hash = new URL(link).hash;
  const learner = await openPage({ path: `/author/job/try/${hash}` });
  await learner.getByRole('heading', { name: 'The lines are yours' }).waitFor();
  await terminal(learner, 'spur/L').waitFor();
  const tutor = await openEditor('job', { path: `/author/job/${hash}` });
  await expect.poll(() => field(tutor, 'Title').inputValue()).toBe('The lines are yours');
  const broken = await openEditor('job', { path: `/author/job/${hash.slice(0, -9)}` });
  await broken.getByText('The link is damaged').waitFor();
});

test('A trouble in the summary leads to its field, and its words stand beside it', async () => {
  const page = await openEditor('job');
  await page.getByRole('button', { name: 'Start a new job' }).click();
  await saveButton(page).click();
  await page.getByRole('button', { name: /^One line for lists/ }).click();
  const summary = field(page, 'One line for lists');
  expect(await summary.evaluate((input) => input === document.activeElement)).toBe(true);
  expect(await summary.getAttribute('aria-invalid')).toBe('true');
  const about = await summary.getAttribute('aria-describedby');
  expect(await page.locator(`[id="${about}"]`).textContent()).toContain(
    'Expected one sentence for lists of jobs.',
  );
});

test.each([
  ['a laptop', openEditor],
  ['a phone', openOnPhone],
])(
  'Axe finds nothing in the job editor on %s, nothing is too small and nothing hangs over',
  async (_, open) => {
    const page = await open('job');
    await seeSound(page, 'empty');
    await makeJob(page);
    await findings(page).waitFor();
    await seeSound(page, 'ticks');
    for (const view of ['Board', 'Strip', 'Table']) {
      await page.getByRole('button', { name: view, exact: true }).click();
      await seeSound(page, view);
    }
    await page.getByRole('radio', { name: 'Convert' }).check();
    await field(page, 'Old system').selectOption('three-port');
    await field(page, 'How it was wired').selectOption('');
    await seeSound(page, 'a conversion');
  },
);
