import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Result } from '../../src/course/coursework/work.ts';
import { sure } from '../../src/course/marks/sure.ts';
import { writeCoursework } from '../../src/files/coursework.ts';
import { writeCourseworkHash } from '../../src/files/coursework-link.ts';
import { writeResult } from '../../src/files/result.ts';
import { codeOf, demoClass, demoCoursework, makeSolver } from '../course/marks/demo-class.ts';
import { folderSource } from '../course/marks/support.ts';
import { seeNoViolation } from './support/axe.ts';
import { type Opening, openPage } from './support/browser.ts';
import { LAPTOP, PHONE } from './support/job.ts';
import { sidewaysScroll } from './support/measure.ts';
import { sheetsOf } from './support/pdf.ts';

const folder = mkdtempSync(join(tmpdir(), 'mark-book-'));
const path = (name: string) => join(folder, name);
/** Wires alone: callouts are graded in the tests of the book. */
const coursework = {
  ...demoCoursework,
  tasks: demoCoursework.tasks.filter(({ kind }) => kind !== 'callout'),
};
let results: Result[];
let all: string[];

const SCRIPT = '<img src=x onerror=alert(1)>';
const FORMULA = '=HYPERLINK("http://x","y")';

/** Sixty files of all sorts: an honest class, four who are not, names that bite, and what is no result. */
beforeAll(() => {
  const solver = makeSolver(coursework, folderSource());
  results = demoClass(coursework, solver, { learners: 50, goes: 9 });
  const spoil = (k: number, change: (result: Result) => Result) => {
    results[k] = change(sure(results[k]));
  };
  spoil(1, (result) => ({ ...result, work: sure(results[0]).work }));
  spoil(2, (result) => ({ ...result, work: result.work.map((work) => ({ ...work, right: true })) }));
  spoil(3, (result) => ({ ...result, work: result.work.map((work) => ({ ...work, took: 100 })) }));
  spoil(4, (result) => ({ ...result, learner: { ...result.learner, name: SCRIPT } }));
  spoil(5, (result) => ({ ...result, learner: { ...result.learner, name: FORMULA } }));
  const text = (k: number) => writeResult(sure(results[k]), sure(results[k]).made);
  all = results.slice(0, 30).map((_, k) => {
    writeFileSync(path(`result-${k}.json`), text(k));
    return path(`result-${k}.json`);
  });
  const zipped = Object.fromEntries(
    results.slice(30).map((_, k) => [`${codeOf(k + 30)}/result.json`, strToU8(text(k + 30))]),
  );
  writeFileSync(
    path('class.zip'),
    zipSync({
      ...zipped,
      'bomb.json': new Uint8Array(30_000_000),
      '../out.json': strToU8('{}'),
      'inner.zip': zipSync({}),
    }),
  );
  const sound = text(0);
  const bad: Record<string, string | Uint8Array> = {
    'empty.json': '',
    'picture.json': new Uint8Array([0x89, 0x50, 0x4e, 0x47]),
    'cut.json': sound.slice(0, 700),
    'changed.json': sound.replace(/"took":\d+/, '"took":1'),
    'proto.json': sound
      .replace('"result":1', '"result":1,"__proto__":{"polluted":true}')
      .replace('"handed":{', '"handed":{"__proto__":{"polluted":true},'),
    'deep.json': '['.repeat(100_000),
    'deep-object.json': `{"a":${'['.repeat(200_000)}`,
    'other.json': '{"backup":1}',
  };
  for (const [name, content] of Object.entries(bad)) {
    writeFileSync(path(name), content);
    all.push(path(name));
  }
  all.push(path('class.zip'));
  writeFileSync(path('coursework.yaml'), writeCoursework(coursework));
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function open(opening: Partial<Opening> = {}): Promise<Page> {
  const page = await openPage({ ...LAPTOP, path: '/mark-book/', ...opening });
  await page.mouse.move(50, 60);
  await page.locator('astro-island[data-awake]').waitFor({ state: 'attached' });
  return page;
}
const done = async (page: Page) => {
  await page.getByRole('group', { name: 'The class, learner by learner' }).waitFor();
  await page.locator('[data-busy="false"]').waitFor();
};
async function marked(opening: Partial<Opening> = {}): Promise<Page> {
  const page = await open(opening);
  await page.getByLabel('Choose the file').setInputFiles(path('coursework.yaml'));
  await page.getByLabel('Choose files').setInputFiles(all);
  await done(page);
  return page;
}

test('Sixty files at once: what is no result is named, all others are marked, and signs are told with care', async () => {
  const page = await marked();
  const left = page.locator('.troubles');
  const names = [
    'empty.json',
    'picture.json',
    'cut.json',
    'changed.json',
    'deep.json',
    'deep-object.json',
    'other.json',
  ];
  await page.locator('.troubles summary').click();
  const said = (await left.textContent()) ?? '';
  for (const name of [...names, 'class.zip › bomb.json', 'class.zip › ../out.json', 'class.zip › inner.zip'])
    expect(said).toContain(name);
  expect(said.match(/expected .+?, found /g)?.length).toBeGreaterThanOrEqual(10);

  const rows = page.locator('tbody tr').filter({ has: page.locator('.open') });
  expect(await rows.count()).toBe(50);
  const looks = page.getByRole('region', { name: 'Worth a look' });
  const text = (await looks.textContent()) ?? '';
  for (const words of ['Made for another variant', 'Told right, is not', 'Quicker than hands are'])
    expect(text).toContain(words);
  expect(text).toContain(`fits what ${codeOf(0)} was given, not what ${codeOf(1)} was given`);
  expect(text).not.toMatch(/cheat|guilty|fraud/i);

  // A script in a name is a name.
  expect(await page.locator('td.name', { hasText: SCRIPT }).count()).toBe(1);
  expect(await page.locator('td.name img').count()).toBe(0);
  expect(await page.evaluate(() => ({}) as { polluted?: boolean })).toEqual({});
  expect(await page.evaluate(() => 'polluted' in {})).toBe(false);
  await seeNoViolation(page, 'the mark book with a class');
});

test('The most common wrong wire is drawn with a mark on it, and said in words', async () => {
  const page = await marked();
  const common = page.getByRole('region', { name: 'What went wrong' });
  await common.locator('svg[role="img"]').waitFor();
  expect(await common.locator('.badge').count()).toBeGreaterThan(0);
  const says = await common.locator('.says').textContent();
  expect(says).toMatch(/belongs in|should not be|should be joined/);
  expect(says).toMatch(/\d+\u00a0learners? of 50/);
  await common
    .getByRole('button', { name: /belongs in|joined/ })
    .nth(1)
    .click();
  await expect.poll(() => common.locator('.says').textContent()).not.toBe(says);
});

test('A learner’s page shows every go: the wiring, the rule, the state that fails; Back leads to the class', async () => {
  const page = await marked();
  const [k, work] = sure(
    results.flatMap((result, at) =>
      result.work
        .filter((one) => one.kind === 'job' && !one.right && at > 6)
        .map((one) => [at, one] as const),
    )[0],
  );
  await page
    .getByRole('button', { name: codeOf(k), exact: true })
    .first()
    .click();
  await page.waitForURL(/#learner=/);
  const section = page.getByRole('region', { name: new RegExp(`${work.slot},`) });
  await section.getByText('The wiring').first().click();
  await section.locator('svg[role="img"]').first().waitFor();
  const text = (await section.textContent()) ?? '';
  expect(text).toMatch(/Fault: |Danger: /);
  expect(text).toMatch(/First fails when|states? of \d+ fail/);
  await seeNoViolation(page, 'a learner’s page');
  await page.goBack();
  await page.getByRole('group', { name: 'The class, learner by learner' }).waitFor();
});

test('The marks come as CSV that no spreadsheet works out', async () => {
  const page = await marked();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save marks (CSV)' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('workshop-week-marks.csv');
  await download.saveAs(path('marks.csv'));
  const csv = readFileSync(path('marks.csv'), 'utf8');
  const { data } = Papa.parse<Record<string, string>>(csv.replace(/^\ufeff/, ''), {
    header: true,
    skipEmptyLines: true,
  });
  expect(data).toHaveLength(50);
  // OWASP, "CSV Injection".
  expect(data[5]?.Name).toBe(`'${FORMULA}`);
  expect(data[4]?.Name).toBe(SCRIPT);
  expect(data[0]?.Code).toBe(codeOf(0));
  const shown = await page.locator('tbody tr').first().locator('.sum').textContent();
  expect(shown).toBe(`${data[0]?.Right}/${data[0]?.Of}`);
});

test('On paper: A4 on its side, a row for every learner, the heads of the table on every sheet, no colours', async () => {
  const page = await marked();
  const sheets = await sheetsOf(page);
  for (const { width, height } of sheets) expect([Math.round(width), Math.round(height)]).toEqual([842, 595]);
  const all = sheets.map(({ says }) => says).join(' ');
  for (const k of results.keys()) expect(all).toContain(codeOf(k));
  const table = sheets.filter(({ says }) => /AB-\d+ ?Learner \d+/.test(says));
  expect(table.length).toBeGreaterThan(1);
  for (const { says } of table) expect(says).toMatch(/Code ?Name/);
  // Nothing runs off a sheet.
  for (const { width, texts } of sheets)
    for (const { text, x, width: wide } of texts) expect(x + wide, text).toBeLessThanOrEqual(width);
  expect(all).not.toContain('Choose files');
  const grey = (colour: string) => /^#(..)\1\1$/.test(colour);
  expect(
    sheets
      .filter(({ says }) => /Learner \d+/.test(says))
      .flatMap(({ colours }) => [...colours])
      .filter((one) => !grey(one)),
  ).toEqual([]);
});

test('With the keyboard alone: the link, the files, sorting, a learner and back', async () => {
  const page = await open({ width: 1366 });
  const link = `${new URL(page.url()).origin}/coursework/${writeCourseworkHash({ coursework })}`;
  await page.getByLabel('or its link').focus();
  await page.keyboard.insertText(link);
  await page.keyboard.press('Enter');
  await page.getByText('from a link').waitFor();
  const chooser = page.waitForEvent('filechooser');
  await page.getByLabel('Choose files').focus();
  await page.keyboard.press('Enter');
  await (await chooser).setFiles(all.slice(0, 12));
  await done(page);
  const right = page.getByRole('columnheader', { name: 'Right' });
  await right.getByRole('button').focus();
  await page.keyboard.press('Enter');
  expect(await right.getAttribute('aria-sort')).toBe('descending');
  const sums = (await page.locator('tbody td.sum').allTextContents()).map((words) =>
    Number(words.split('/')[0]),
  );
  expect(sums).toEqual([...sums].sort((a, b) => b - a));
  await page.locator('.open').first().focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('learner');
});

test('On a phone it fits: the table scrolls in itself, the page does not', async () => {
  const page = await marked({ ...PHONE });
  expect(await sidewaysScroll(page)).toBe(0);
  await page
    .getByRole('button', { name: codeOf(7), exact: true })
    .first()
    .tap();
  await page.locator('#learner').waitFor();
  expect(await sidewaysScroll(page)).toBe(0);
});

test('Files that are dropped are taken, a coursework among them too; nothing is sent anywhere', async () => {
  const page = await open();
  const files = [path('coursework.yaml'), ...all.slice(0, 8)].map((file) => ({
    name: file.slice(folder.length + 1),
    text: readFileSync(file, 'utf8'),
  }));
  await page.evaluate((given) => {
    const transfer = new DataTransfer();
    for (const { name, text } of given) transfer.items.add(new File([text], name));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }, files);
  await done(page);
  expect(await page.locator('tbody tr .open').count()).toBe(8);
  expect(await page.getByText('from coursework.yaml').count()).toBe(1);
});

test('The class is forgotten on leaving, unless it is asked to stay; then it can be taken off again', async () => {
  const page = await marked();
  await page.reload();
  await page.mouse.move(80, 80);
  await page.locator('astro-island[data-awake]').waitFor({ state: 'attached' });
  expect(await page.getByRole('table').count()).toBe(0);
  await page.getByLabel('Choose files').setInputFiles(all.slice(0, 6));
  await done(page);
  await page.getByRole('button', { name: 'Keep it on this device' }).click();
  await page.getByRole('button', { name: 'Do not keep it' }).waitFor();
  await page.reload();
  await done(page);
  expect(await page.locator('tbody tr .open').count()).toBe(6);
  await page.getByRole('button', { name: 'Close this class' }).click();
  await page.reload();
  await page.mouse.move(80, 80);
  await page.locator('astro-island[data-awake]').waitFor({ state: 'attached' });
  expect(await page.getByRole('table').count()).toBe(0);
});

test('It can be stopped in the middle, and begun again', async () => {
  const page = await open();
  // Grading waits for this file: so the middle lasts until Stop is pressed.
  const needed = '**/course/double-faults.json';
  let asked = 0;
  await page.context().route(needed, () => {
    asked++;
  });
  await page.getByLabel('Choose files').setInputFiles(all);
  await expect.poll(() => asked).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.context().unroute(needed);
  await page.getByText('Stopped. Nothing was marked').waitFor();
  await page.getByLabel('Choose files').setInputFiles(all.slice(0, 4));
  await done(page);
  expect(await page.locator('tbody tr .open').count()).toBe(4);
});
