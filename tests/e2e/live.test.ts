import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { choose, openJob, PHONE, rightWires, terminal } from './support/job.ts';
import { judgeButton } from './support/verdict.ts';

const right = rightWires();
async function flip(page: Page, ...inputs: string[]): Promise<void> {
  for (const input of inputs) await page.locator(`[data-input="${input}"]`).click();
}
/** How a part on the board says it stands, under its name. */
const part = (page: Page, name: RegExp) =>
  page.locator('svg .part').filter({ hasText: name }).locator('.state');
const threePort = (page: Page) => part(page, /^\s*(3-port|Three-port)/);
const twoPort = (page: Page) => part(page, /^\s*(2-port|Two-port)/);
const boiler = (page: Page) => part(page, /^\s*Boiler/);
const now = (page: Page) => page.locator('p').filter({ hasText: /^Now:/ });
const says = async (page: Page, id: string) => (await terminal(page, id).getAttribute('aria-label')) ?? '';

test('With both calls on, the motors drive the valves in visible time, and then the boiler fires', async () => {
  const page = await openJob({ wires: right });
  expect(await now(page).textContent()).toContain('Nothing on the strip is live');
  await flip(page, 'supply');
  // Hot-water-off makes 5 live, and a satisfied thermostat joins 5 to 4.
  expect(await now(page).textContent()).toContain('Live on the strip: 1, 4 and 5.');
  expect(await says(page, 'strip/4')).toMatch(/ live, joined/);
  expect(await says(page, 'strip/2')).toMatch(/ dead, joined/);

  await flip(page, 'hot-water', 'heating', 'room', 'cylinder');
  const started = performance.now();
  await expect.poll(() => threePort(page).textContent()).toContain('motor driving');
  expect(await now(page).textContent()).toContain('the three-port valve is driven by its motor');
  await expect.poll(() => threePort(page).textContent(), { timeout: 8000 }).toContain('at mid');
  await expect.poll(() => twoPort(page).textContent(), { timeout: 8000 }).toBe('open');
  await expect.poll(() => boiler(page).textContent(), { timeout: 8000 }).toContain('firing');
  // Two positions of the two-port, at more than half a second each: an eye can follow it.
  expect(performance.now() - started).toBeGreaterThan(1000);
  expect(await now(page).textContent()).toMatch(/1, 2, 3, 4, 6, 7 and 8\./);
  const plant = page.getByRole('region', { name: 'Where the heat goes' });
  expect(await plant.textContent()).toMatch(
    /Heat goes to the cylinder and the radiators|radiators and the cylinder/,
  );
});

test('A tripped cut-out lets the spring shut the two-port while the heating goes on', async () => {
  const page = await openJob({ wires: right });
  await flip(page, 'supply', 'hot-water', 'heating', 'room', 'cylinder');
  await expect.poll(() => boiler(page).textContent(), { timeout: 8000 }).toContain('firing');
  await expect.poll(() => twoPort(page).textContent(), { timeout: 8000 }).not.toContain('driving');
  await flip(page, 'cut-out');
  await expect.poll(() => twoPort(page).textContent()).toContain('spring returning');
  await expect.poll(() => twoPort(page).textContent(), { timeout: 8000 }).toContain('shut');
});

test('The strip’s words follow the switches in the strip view and the table', async () => {
  const page = await openJob({ ...PHONE, wires: right });
  expect(await terminal(page, 'strip/4').textContent()).toContain('dead');
  await flip(page, 'supply', 'cylinder');
  expect(await terminal(page, 'strip/4').textContent()).toContain('dead');
  await flip(page, 'hot-water');
  await expect.poll(() => terminal(page, 'strip/4').textContent()).toContain('live');
  await choose(page, 'Table');
  const row = page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: 'HW-ON', exact: true }) });
  expect(await row.textContent()).toContain('live');
});

test('Turning the supply off sends every valve back to rest', async () => {
  const page = await openJob({ wires: right });
  await flip(page, 'supply', 'heating', 'room');
  await expect
    .poll(() => threePort(page).textContent(), { timeout: 9000 })
    .toContain('open to the radiators only');
  await flip(page, 'supply');
  await expect.poll(() => threePort(page).textContent(), { timeout: 9000 }).toContain('at rest');
  expect(await boiler(page).textContent()).toContain('off');
});

/** Whether anything moves on the page: animations that run and take a time that can be seen. */
const moves = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      document.getAnimations().filter((animation) => {
        const { duration = 0 } = animation.effect?.getComputedTiming() ?? {};
        return animation.playState === 'running' && Number(duration) > 50;
      }).length,
  );

test.each([false, true])(
  'With reduced motion wished for (%s), nothing flows but the states are the same',
  async (reducedMotion) => {
    const page = await openJob({ wires: right, reducedMotion });
    await flip(page, 'supply', 'hot-water', 'cylinder');
    await expect.poll(() => boiler(page).textContent(), { timeout: 9000 }).toContain('firing');
    if (reducedMotion) expect(await moves(page)).toBe(0);
    else expect(await moves(page)).toBeGreaterThan(0);
  },
);

test('With reduced motion wished for, the page jumps to the verdict and does not glide', async () => {
  const page = await openJob({ ...PHONE, wires: right, reducedMotion: true });
  await judgeButton(page).tap();
  const stops = await page.evaluate(async () => {
    const seen = new Set<number>();
    for (let frame = 0; frame < 40; frame++) {
      await new Promise(requestAnimationFrame);
      seen.add(Math.round(scrollY));
    }
    return seen.size;
  });
  // At most where it was and where it went.
  expect(stops).toBeLessThanOrEqual(2);
});
