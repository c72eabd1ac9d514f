import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { nearestChange } from '../../src/engine/grade/change.ts';
import { seeNoViolation } from './support/axe.ts';
import { choose, jobOf, keptWires, keysOf, openJob, PHONE, systemOf, type Wire } from './support/job.ts';
import { sidewaysScroll } from './support/measure.ts';
import { judgeButton, verdict } from './support/verdict.ts';

// The old three-port stays, an unvented cylinder comes in: the two-port and the cut-out have to be wired.
const JOB = 'vented-to-unvented-three-port';
const { given, references } = jobOf(JOB);
const reference = (id: string): readonly Wire[] => {
  const found = references.find((one) => one.id === id);
  if (!found) throw new Error(`There is no right wiring ${id}.`);
  return found.wires;
};
const after = reference('cut-out-after-thermostat');

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const change = (page: Page) => page.getByRole('region', { name: 'The smallest change' });
const rows = (page: Page, title: string) =>
  change(page).getByRole('table', { name: title }).locator('tbody').getByRole('row');

/** Opens the job with these wires in, and judges them. */
async function judged(wires: readonly Wire[], size = {}): Promise<Page> {
  const page = await openJob({ job: JOB, wires, ...size });
  await judgeButton(page).first().click();
  await verdict(page).waitFor();
  return page;
}

test('A conversion tells what was here and begins with the old wires, each marked as old and none of them fixed', async () => {
  const page = await openJob({ job: JOB });
  expect(await page.getByText('What was here:').locator('..').textContent()).toContain(
    'Three-port with a vented cylinder',
  );
  await choose(page, 'Table');
  const old = page.getByRole('button', { name: /^6 \(old\): take Cylinder thermostat CALL out of it$/ });
  expect(await page.getByRole('button', { name: /\(old\): take/ }).count()).toBeGreaterThan(given.length - 1);
  await old.click();
  expect(await old.count()).toBe(0);
  expect((await keptWires(page, JOB)).length).toBe(given.length - 1);

  await press(page, 'Clear');
  expect(await keptWires(page, JOB)).toEqual([]);
  await press(page, 'Reset');
  expect(await keptWires(page, JOB)).toEqual(keysOf(given));
});

test('The old wiring as it stands is rejected, and no change is given away', async () => {
  const page = await judged(given);
  expect(await verdict(page).textContent()).toBe('Not yet');
  expect(await change(page).count()).toBe(0);
});

test('Once the new wiring is accepted, the fewest wires to move are listed beside what the learner moved', async () => {
  const page = await judged(after);
  await expect.poll(() => verdict(page).textContent()).toBe('Accepted');
  const { change: best } = nearestChange(
    systemOf(JOB),
    given,
    references.map(({ wires }) => wires),
  );
  // Worked by hand: only the cylinder call leaves its terminal; see tests/engine/grade/change.test.ts.
  expect([best.lift.length, best.land.length]).toEqual([1, 7]);
  await expect.poll(() => rows(page, 'Lift 1').allInnerTexts()).toEqual(['BN\tCyl stat CALL\t6']);
  expect(await rows(page, 'Land 7').count()).toBe(7);
  expect(await rows(page, 'Land 7').allInnerTexts()).toContain('GY\t2-port grey\t1');
  const text = await change(page).textContent();
  expect(text).toContain('Thermostat joined straight to the cut-out');
  // The reference has other strip numbers, so whoever wires it number by number moves more than needed.
  expect(text).toMatch(/You: lift \d+, land \d+\. That is \d+ more\./);
  expect(text).toContain('For the circuit you chose, the fewest is lift 1, land 8.');

  await press(page, 'Put it on the board');
  expect(await keptWires(page, JOB)).toEqual(keysOf([...best.stays, ...best.land]));
  await judgeButton(page).click();
  await expect.poll(() => verdict(page).textContent()).toBe('Accepted');
  await expect.poll(() => change(page).textContent()).toContain('You: lift 1, land 7. No wire too many.');
});

test('The smallest change reads well on a small phone and has nothing that shuts anyone out', async () => {
  const page = await judged(after, PHONE);
  await rows(page, 'Land 7').first().waitFor();
  expect(await sidewaysScroll(page)).toBe(0);
  await seeNoViolation(page, 'a conversion, accepted');
});
