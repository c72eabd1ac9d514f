import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { choose, jobOf, keptWires, keysOf, openJob, rightWires, WHOLE, type Wire } from './support/job.ts';
import { arrowTo, keyWire, tabTo } from './support/keys.ts';
import { BREAKS, judgeButton, seeAccepted, seeRejected } from './support/verdict.ts';

const right = rightWires();

async function judgeByKeys(page: Page): Promise<void> {
  await tabTo(page, () => judgeButton(page).evaluate((button) => button === document.activeElement));
  await page.keyboard.press('Enter');
}

test('A learner wires the whole job with the keyboard alone, and the judge accepts it', async () => {
  const page = await openJob();
  for (const wire of right) await keyWire(page, wire);
  expect(await keptWires(page)).toEqual(keysOf(right));
  await judgeByKeys(page);
  await seeAccepted(page, right);
});

test('A thermostat can be joined straight to the cut-out with the keyboard', async () => {
  const direct = rightWires('thermostat-straight-to-cut-out');
  const short: Wire = ['cyl-stat/CALL', 'cut-out/IN'];
  const page = await openJob({ wires: direct.filter((wire) => !short.every((end) => wire.includes(end))) });
  await keyWire(page, short);
  await judgeByKeys(page);
  await seeAccepted(page, direct);
});

test.each(Object.entries(BREAKS))('By keyboard with %s, the judge says so and shows it', async (_, how) => {
  const page = await openJob({ wires: right });
  for (const [lead] of how.lift) {
    await arrowTo(page, lead);
    await page.keyboard.press('Delete');
  }
  for (const wire of how.land) await keyWire(page, wire);
  await judgeByKeys(page);
  await seeRejected(page, right, how);
});

test('Escape lets go of a lead in hand, and Backspace takes the last wire out of a terminal', async () => {
  const page = await openJob({ wires: right });
  await arrowTo(page, 'pump/L');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await arrowTo(page, 'pump/N');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  expect(await keptWires(page)).toEqual(keysOf(right));
  await page.keyboard.press('Backspace');
  expect(await keptWires(page)).toEqual(keysOf(right.filter((wire) => !wire.includes('pump/N'))));
});

test('The table of leads reaches a whole right wiring too, and takes wires out', async () => {
  const page = await openJob();
  await choose(page, 'Table');
  const { parts } = jobOf(WHOLE).spec;
  const say = (end: string) => {
    const [part = '', mark = ''] = end.split('/');
    return part === 'strip' ? `terminal ${mark}` : `${parts[part]?.name} ${mark}`;
  };
  const direct = rightWires('thermostat-straight-to-cut-out');
  for (const [a, b] of direct) {
    const [lead, end] = a.startsWith('strip/') ? [b, a] : [a, b];
    await page.getByRole('combobox', { name: `Land ${say(lead)} in`, exact: true }).selectOption(end);
  }
  expect(await keptWires(page)).toEqual(keysOf(direct));
  await judgeButton(page).click();
  await seeAccepted(page, direct);
  await page.getByRole('button', { name: '12: take Pump E out of it', exact: true }).click();
  expect(await keptWires(page)).toEqual(keysOf(direct.filter((wire) => !wire.includes('pump/E'))));
});
