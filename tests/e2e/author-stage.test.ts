import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { parseStage } from '../../src/files/stage.ts';
import {
  chooseFile,
  openEditor,
  openOnPhone,
  problems,
  saveButton,
  saved,
  seeSound,
} from './support/author.ts';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const step = (page: Page, number: number) => page.getByRole('group', { name: `Step ${number}`, exact: true });
const caption = (page: Page) => page.locator('[data-slide] [data-caption]');

/** A script of two steps: cold, and hot water called. */
async function makeScript(page: Page) {
  await page.getByRole('button', { name: 'Start a script' }).click();
  await field(page, 'Title').fill('Hot water');
  await field(page, 'System').selectOption('unvented-three-port');
  await page.getByRole('button', { name: 'Add a step' }).click();
  await step(page, 1).getByLabel('Caption', { exact: true }).fill('Cold. Both valves rest.');
  await page.getByRole('button', { name: 'Add a step' }).click();
  const second = step(page, 2);
  await second.getByLabel('Caption', { exact: true }).fill('Hot water is called, and the boiler fires.');
  await second.getByLabel('Supply', { exact: true }).selectOption('on');
  await second.getByLabel('Hot water', { exact: true }).selectOption('on');
  await second.getByLabel('Cylinder', { exact: true }).selectOption('calling');
  await second.getByLabel('Put in the spotlight').selectOption('boiler/SL');
}

test('A tutor writes a script, sees each step, has its captions proved and presents it', async () => {
  const page = await openEditor('stage');
  await makeScript(page);
  await step(page, 2).getByRole('button', { name: 'Take what the engine finds' }).click();
  await step(page, 2).getByRole('button', { name: 'The boiler fires: take away' }).waitFor();
  await step(page, 2).getByRole('button', { name: 'Live: Boiler SL: take away' }).waitFor();
  await expect.poll(() => problems(page).count()).toBe(0);
  await expect.poll(() => caption(page).textContent()).toBe('Hot water is called, and the boiler fires.');
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await expect.poll(() => caption(page).textContent()).toBe('Cold. Both valves rest.');
  const { name, yaml } = await saved(page, () => saveButton(page).click());
  expect(name).toBe('hot-water.yaml');
  expect(yaml.split('\n')[0]).toMatch(/^# yaml-language-server: \$schema=http.*\/schema\/stage\.json$/);
  expect(parseStage(yaml, name).steps[1]).toMatchObject({
    set: { supply: 'on', 'hot-water': 'on', cylinder: 'calling' },
    spot: ['boiler/SL'],
    expect: { fires: true, pumps: true, heats: ['coil'], live: ['boiler/SL'] },
  });
  await page.getByRole('button', { name: 'Present on the stage' }).click();
  await page.getByText('is sound: 2 steps').waitFor();
  await expect.poll(() => caption(page).textContent()).toBe('Cold. Both valves rest.');
});

test('A step that claims what is not so is named, in the summary and in the step', async () => {
  const page = await openEditor('stage');
  await makeScript(page);
  await step(page, 2).getByRole('button', { name: 'Take what the engine finds' }).click();
  await step(page, 2).getByLabel('Supply', { exact: true }).selectOption('off');
  await expect
    .poll(() => problems(page).allInnerTexts())
    .toContainEqual(
      expect.stringMatching(
        /^Step 2, what must hold\s+Expected what holds in this state; found that the boiler fires: false/,
      ),
    );
  expect(await step(page, 2).locator('.wrong').textContent()).toContain('the boiler fires: false');
  await step(page, 1).getByLabel('Caption', { exact: true }).fill('');
  await saveButton(page).click();
  await expect
    .poll(() => problems(page).allInnerTexts())
    .toEqual([expect.stringMatching(/^Step 1, caption\s+Expected a caption\.$/)]);
});

test('Steps are followed, put in another order and brought back by undo; the draft outlasts a reload', async () => {
  const page = await openEditor('stage');
  await makeScript(page);
  await step(page, 2).getByLabel('Follow the live of a call').selectOption('water');
  await expect.poll(() => page.getByText(/^Slide \d+ of \d+$/).textContent()).toMatch(/of ([5-9]|\d\d)$/);
  await page.getByRole('button', { name: /^Move up: Hot water is called/ }).click();
  await expect
    .poll(() => step(page, 1).getByLabel('Caption', { exact: true }).inputValue())
    .toMatch(/^Hot water/);
  await page.reload();
  await expect
    .poll(() => step(page, 1).getByLabel('Caption', { exact: true }).inputValue())
    .toMatch(/^Hot water/);
  await page.getByRole('button', { name: /^Remove: Cold/ }).click();
  await page.keyboard.press('Control+z');
  await expect.poll(() => step(page, 2).getByLabel('Caption', { exact: true }).inputValue()).toMatch(/^Cold/);
});

test('A file with a slip is refused by name and place, and the draft stays', async () => {
  const page = await openEditor('stage');
  await makeScript(page);
  await chooseFile(
    page,
    'mine.yaml',
    'title: T\nsystem: three-port\nsteps:\n  - says: One.\n    spott: [pump]\n',
  );
  await expect.poll(() => page.getByRole('alert').textContent()).toMatch(/mine\.yaml.*did you mean "spot"/);
  expect(await field(page, 'Title').inputValue()).toBe('Hot water');
});

test.each([
  ['a laptop', openEditor],
  ['a phone', openOnPhone],
])(
  'Axe finds nothing in the stage editor on %s, nothing is too small and nothing hangs over',
  async (_, open) => {
    const page = await open('stage');
    await seeSound(page, 'empty');
    await makeScript(page);
    await step(page, 2).getByLabel('What fails from here on').selectOption({ index: 2 });
    await step(page, 2).getByRole('button', { name: 'Take what the engine finds' }).click();
    await caption(page).waitFor();
    await seeSound(page, 'two steps');
  },
);
