import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { buildChecked } from '../../src/files/build.ts';
import { wiresToLink } from '../../src/files/link.ts';
import { systemPages } from '../../src/files/site/systems.ts';
import { statesTable } from '../../src/ui/paper/states.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { jobOf, rightWires, WHOLE } from './support/job.ts';
import { sidewaysScroll, smallTargets } from './support/measure.ts';
import { type PaperSheet, sheetsOf } from './support/pdf.ts';

/** Points in a millimetre. */
const MM = 72 / 25.4;
const isA4 = ({ width, height }: PaperSheet): boolean => {
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  // ISO 216: 210 mm by 297 mm.
  return Math.abs(short - 210 * MM) < 1.5 && Math.abs(long - 297 * MM) < 1.5;
};

/** Texts nearer than 10 mm to an edge of the sheet: most printers cannot put them on paper. */
const nearTheEdge = ({ texts, width, height }: PaperSheet): string[] =>
  texts
    .filter(
      ({ x, y, width: wide, height: tall }) =>
        x < 10 * MM || x + wide > width - 10 * MM || y - tall < 8 * MM || y > height - 10 * MM,
    )
    .map(({ text }) => text);

/** Colours that are no grey. */
const coloured = ({ colours }: PaperSheet): string[] =>
  [...colours].filter((colour) => new Set(colour.match(/[\da-f]{2}/gi)).size !== 1);

const bare = (text: string): string => text.replace(/\s+/g, '');

async function only(page: Page, sheet: string): Promise<void> {
  for (const box of await page.locator('input[name="sheet"]:visible').all())
    await box.setChecked((await box.getAttribute('value')) === sheet);
}

test.each([
  '/paper/six-zones/',
  '/paper/unvented-three-port/',
  '/paper/job/unvented-three-port/',
  '/paper/job/six-zones-burnt-switches/',
  '/paper/job/three-port-to-two-two-ports-unvented/',
])('%s prints in black on A4 with nothing cut off', async (path) => {
  const page = await openPage({ path, theme: 'dark' });
  await page.evaluate(() => document.fonts.ready);
  const sheets = await sheetsOf(page);
  expect(sheets.length).toBeGreaterThan(2);
  expect(sheets.length).toBeLessThanOrEqual(10);
  for (const [k, sheet] of sheets.entries()) {
    expect(isA4(sheet), `sheet ${k + 1}`).toBe(true);
    expect(nearTheEdge(sheet), `sheet ${k + 1}`).toEqual([]);
    expect(coloured(sheet), `sheet ${k + 1}`).toEqual([]);
    expect(sheet.colours.size).toBeGreaterThan(0);
    expect(sheet.texts.length, `sheet ${k + 1}`).toBeGreaterThan(8);
    // 6 points is the least that a sheet at arm's length is read at: common practice.
    for (const { text, height } of sheet.texts) expect(height, text).toBeGreaterThanOrEqual(6);
  }
});

/** The largest, and every fourth of the others: tests/ui/paper holds every cell of all of them. */
const some = systemPages().filter(({ spec }, k) => spec.id === 'six-zones' || k % 4 === 0);

test('The table of states is on two sheets at most, line for line as the engine says', async () => {
  for (const { spec, system, references } of some) {
    const page = await openPage({ path: `/paper/${spec.id}/` });
    await only(page, 'states');
    await page.evaluate(() => document.fonts.ready);
    const sheets = await sheetsOf(page);
    expect(sheets.length, spec.id).toBeLessThanOrEqual(2);
    const read = bare(sheets.map(({ says }) => says).join(' '));
    const { rows } = statesTable(
      system,
      references.map(({ wires }) => wires),
    );
    for (const [k, { says, called, cells }] of rows.entries()) {
      const line = bare([String(k + 1), says, called, ...cells.map((cell) => cell.says)].join(''));
      expect(read, `${spec.id}, line ${k + 1}`).toContain(line);
    }
    for (const sheet of sheets) {
      expect(sheet.width, spec.id).toBeGreaterThan(sheet.height);
      expect(nearTheEdge(sheet), spec.id).toEqual([]);
    }
    expect(read, spec.id).toContain(bare('Competent persons only.'));
    await page.context().close();
  }
}, 120_000);

test('A blank strip shows every terminal with the letters of its core', async () => {
  const page = await openPage({ path: '/paper/unvented-three-port/' });
  await only(page, 'blank');
  const [sheet, ...more] = await sheetsOf(page);
  expect(more.map(({ says }) => says)).toEqual([]);
  const texts = (sheet?.texts ?? []).map(({ text }) => text.trim());
  const { spec } = jobOf(WHOLE);
  for (const { kind, terminals, part } of buildChecked(spec, WHOLE).parts.map((one) => ({
    part: one.name,
    kind: one.kind.kind,
    terminals: one.kind.terminals,
  })))
    for (const { id } of terminals) {
      const letters = texts.filter((text) => text === id).length;
      expect(letters, `${part} ${kind} ${id}`).toBeGreaterThan(0);
    }
  expect(texts.filter((text) => text === 'GNYE').length).toBe(5);
});

test('What is not ticked is neither on the screen nor on paper, without scripts too', async () => {
  const page = await openPage({ path: '/paper/three-port/', scripts: false });
  await only(page, 'list');
  expect(await page.locator('.sheet:visible').count()).toBe(1);
  const [, second] = await page.locator('input[name="wiring"]').all();
  await second?.check();
  const says = (await sheetsOf(page)).map((sheet) => sheet.says).join(' ');
  expect(says).toContain('Boiler and pump on a test link');
  expect(says).not.toContain('Cylinder call straight to the switched line');
});

test('The learner’s own wiring comes to paper out of a link, wire for wire', async () => {
  const wires = rightWires().slice(3);
  const link = wiresToLink(buildChecked(jobOf(WHOLE).spec, WHOLE), wires);
  const page = await openPage({ path: `/paper/job/${WHOLE}/#w=${link}` });
  await page.getByRole('status').filter({ hasText: 'Your own wiring' }).waitFor();
  await only(page, 'own');
  const [sheet] = await sheetsOf(page);
  expect(sheet?.says).toContain(`${wires.length} wires.`);
  expect(await page.locator('.own tbody tr').count()).toBe(wires.length);
});

test('A damaged link of a wiring is told plainly, and the other sheets stay', async () => {
  const page = await openPage({ path: `/paper/job/${WHOLE}/#w=AQAA` });
  await expect
    .poll(() => page.locator('[data-own-status]').textContent())
    .toContain('Your own wiring is not among the sheets.');
  expect(await page.locator('.sheet:visible').count()).toBe(3);
});

test.each(['/paper/', '/paper/unvented-three-port/', `/paper/job/${WHOLE}/`])(
  '%s is clean for axe, has large enough targets and never scrolls sideways',
  async (path) => {
    const page = await openPage({ path, reducedMotion: true });
    await seeNoViolation(page, 'wide');
    await page.setViewportSize({ width: 320, height: 800 });
    expect(await sidewaysScroll(page)).toBe(0);
    expect(await smallTargets(page)).toEqual([]);
  },
);
