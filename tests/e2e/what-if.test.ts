import { expect, test } from 'vitest';
import { openPage } from './support/browser.ts';
import { LAPTOP } from './support/job.ts';

const path = '/what-if/unvented-three-port/';
/** The page once its scripts are at work: what is chosen before that is not heard. */
async function openWhatIf() {
  const page = await openPage({ path, ...LAPTOP });
  await page.locator('.whatif[data-ready]').waitFor();
  return page;
}
const layers = 'Layers of protection: Cut-out after the thermostat';

test('The layers of the right wiring are listed, and playing one shows the heat going in', async () => {
  const page = await openWhatIf();
  const list = page.getByRole('region', { name: layers });
  // An independent prototype found these; tests/engine/faults/protection.test.ts holds the whole list.
  await list.getByRole('button', { name: 'Play: the two-port valve is stuck open' }).click();
  await page.getByText('The store is too hot already, and it is still heated.').waitFor();
  expect(await list.getByText('The two-port valve is stuck open.').isVisible()).toBe(true);
  expect(await list.getByRole('listitem').count()).toBe(9);
});

test('Failing a part by hand and mending it again changes where the heat goes', async () => {
  const page = await openWhatIf();
  const heated = page.getByText('it is still heated');
  await page.getByText('Two-port valve', { exact: true }).first().click();
  await page.getByRole('checkbox', { name: 'Is stuck open' }).check();
  await heated.waitFor();
  await page.getByRole('button', { name: 'Mend everything' }).click();
  await heated.waitFor({ state: 'hidden' });
});

test('Beside a wiring with the cut-out bypassed, the welded thermostat is marked as enough only there', async () => {
  const page = await openWhatIf();
  await page.getByLabel('Beside it').selectOption('cut-out-bypassed');
  const other = page.getByRole('region', { name: /bypassed/ });
  await other.getByText('Only here.').first().waitFor();
  expect(await other.getByText('The cylinder thermostat is welded on its call. Only here.').count()).toBe(1);
});

test('Three failures at once are tried off the page’s own thread, and the search can be stopped', async () => {
  const page = await openWhatIf();
  const list = page.getByRole('region', { name: layers });
  await list.getByRole('button', { name: 'Try three at once' }).click();
  await list.getByText(/Trying 3 at once/).waitFor();
  await list.getByRole('button', { name: 'Stop' }).click();
  expect(await list.getByText(/Trying/).count()).toBe(0);
  expect(await list.getByRole('listitem').count()).toBe(9);
});

test('The chart tells in words how hot the store gets when the thermostat welds', async () => {
  const page = await openWhatIf();
  await page.getByText('Cylinder thermostat', { exact: true }).first().click();
  await page.getByRole('checkbox', { name: 'Is welded on its call' }).last().check();
  await page
    .getByText(/The store reaches the cut-out’s trip point/)
    .first()
    .waitFor();
});
