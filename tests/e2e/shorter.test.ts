import { expect, test } from 'vitest';
import { dragWire } from './support/board.ts';
import {
  choose,
  jobOf,
  keptWires,
  keysOf,
  openJob,
  PHONE,
  rightWires,
  SHORTER,
  said,
  terminal,
  wireKey,
} from './support/job.ts';
import { arrowTo } from './support/keys.ts';
import { judgeButton, seeAccepted } from './support/verdict.ts';

const given = jobOf(SHORTER).job.gives?.wires ?? [];
const right = rightWires();
const own = right.filter((wire) => !keysOf(given).includes(wireKey(wire)));

test('The shorter job opens with its given wires, which clear and Delete leave in', async () => {
  const page = await openJob({ job: SHORTER });
  expect(given.length).toBeGreaterThan(10);
  expect(await page.locator('.wire').count()).toBe(given.length);
  await dragWire(page, own[0] ?? ['', '']);
  await page.getByRole('button', { name: 'Clear', exact: true }).click();
  expect(await keptWires(page, SHORTER)).toEqual(keysOf(given));
  await arrowTo(page, 'boiler/E');
  await page.keyboard.press('Delete');
  expect(await keptWires(page, SHORTER)).toEqual(keysOf(given));
  await terminal(page, 'spur/L').click();
  await terminal(page, 'strip/1').click();
  expect(await page.getByText('given by the job').isVisible()).toBe(true);
  expect(await page.getByRole('button', { name: 'Take it out' }).count()).toBe(0);
});

test('The table of the shorter job marks given wires and offers no button to take them out', async () => {
  const page = await openJob({ job: SHORTER });
  await choose(page, 'Table');
  expect(await page.getByText('(given)').count()).toBeGreaterThanOrEqual(given.length);
  expect(await page.getByRole('button', { name: /^Take / }).count()).toBe(0);
});

test('A given wire tapped on a phone stays', async () => {
  const page = await openJob({ ...PHONE, job: SHORTER });
  await page.locator('[data-wire="spur/L strip/1"]').first().tap();
  expect(await page.getByText('given', { exact: true }).isVisible()).toBe(true);
  expect(await page.getByRole('button', { name: 'Take it out' }).count()).toBe(0);
  expect(await said(page).count()).toBe(1);
});

test('The shorter job is accepted once the switching is landed', async () => {
  const page = await openJob({ job: SHORTER });
  for (const wire of own) await dragWire(page, wire);
  await judgeButton(page).click();
  await seeAccepted(page, right);
});
