import { expect, test } from 'vitest';
import { dragWire } from './support/board.ts';
import { keptWires, keysOf, openJob, rightWires, terminal, type Wire } from './support/job.ts';
import { BREAKS, judgeButton, seeAccepted, seeRejected } from './support/verdict.ts';

const right = rightWires();

test('A learner wires the whole job by mouse drag, and the judge accepts it', async () => {
  const page = await openJob();
  for (const wire of right) await dragWire(page, wire);
  expect(await keptWires(page)).toEqual(keysOf(right));
  await judgeButton(page).click();
  await seeAccepted(page, right);
});

test('A thermostat can be joined straight to the cut-out by mouse, lead to lead', async () => {
  const direct = rightWires('thermostat-straight-to-cut-out');
  const short: Wire = ['cyl-stat/CALL', 'cut-out/IN'];
  const page = await openJob({ wires: direct.filter((wire) => !short.every((end) => wire.includes(end))) });
  await dragWire(page, short);
  expect(await keptWires(page)).toEqual(keysOf(direct));
  await judgeButton(page).click();
  await seeAccepted(page, direct);
});

test.each(Object.entries(BREAKS))('With %s, the judge says so and shows where it fails', async (_, how) => {
  const page = await openJob({ wires: right });
  for (const [a, b] of how.lift) {
    await terminal(page, a).click();
    await terminal(page, b).click();
    await page.getByRole('button', { name: 'Take it out' }).click();
  }
  for (const wire of how.land) await dragWire(page, wire);
  await judgeButton(page).click();
  await seeRejected(page, right, how);
});
