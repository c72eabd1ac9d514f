import type { BrowserContext, Page } from 'playwright-core';
import { buildSystem } from '../../../src/engine/model/build.ts';
import type { System } from '../../../src/engine/model/system.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { type JobPage, jobPages } from '../../../src/files/site/jobs.ts';
import { type Opening, openPage } from './browser.ts';

export type { Wire } from '../../../src/engine/model/wiring.ts';
export { wireKey } from '../../../src/engine/model/wiring.ts';

/** The whole job, and the shorter one that comes with lines, neutrals and earths landed. */
export const WHOLE = 'unvented-three-port';
export const SHORTER = 'unvented-three-port-switching';

const jobs = new Map(jobPages().map((page) => [page.job.id, page]));

/** A job of the course as its files say. */
export function jobOf(id: string): JobPage {
  const page = jobs.get(id);
  if (!page) throw new Error(`There is no job ${id}.`);
  return page;
}

export const systemOf = (id: string): System => buildSystem(jobOf(id).spec, findKind);

/** The wires of a right wiring of the whole job: the first one when no name is given. */
export function rightWires(id = 'cut-out-after-thermostat'): readonly Wire[] {
  const reference = jobOf(WHOLE).references.find((one) => one.id === id);
  if (!reference) throw new Error(`There is no right wiring ${id}.`);
  return reference.wires;
}

const placeOf = (job: string): string => `switched-live/wiring/1/${job}`;

/** Puts a wiring where the page keeps it on the device, as an earlier visit would have: once, not at each reload. */
export const keepBefore =
  (job: string, wires: readonly Wire[]) =>
  (context: BrowserContext): Promise<unknown> =>
    context.addInitScript(
      ([place, text]) => {
        // The blank page before the first has no storage.
        if (location.protocol === 'about:') return;
        if (localStorage.getItem(place) === null) localStorage.setItem(place, text);
      },
      [placeOf(job), JSON.stringify({ job, wires })] as const,
    );

/** The wires the page keeps on the device, as sorted keys. */
export async function keptWires(page: Page, job = WHOLE): Promise<string[]> {
  const text = await page.evaluate((place) => localStorage.getItem(place), placeOf(job));
  const kept = JSON.parse(text ?? '{"wires":[]}') as { wires: Wire[] };
  return kept.wires.map(wireKey).sort();
}

export const keysOf = (wires: readonly Wire[]): string[] => wires.map(wireKey).sort();

export interface JobOpening extends Omit<Opening, 'path'> {
  readonly job?: string;
  /** Wires already there from an earlier visit. */
  readonly wires?: readonly Wire[];
  /** What follows the address, such as a link's `#w=…`. */
  readonly hash?: string;
}

/** A laptop's screen, and a small phone's. */
export const LAPTOP = { width: 1366, height: 768 } as const;
export const PHONE = { width: 360, height: 800, touch: true } as const;

/** Opens the wiring page of a job and waits until it answers. */
export async function openJob({ job = WHOLE, wires, hash = '', ...rest }: JobOpening = {}): Promise<Page> {
  const page = await openPage({
    ...LAPTOP,
    ...rest,
    path: `/jobs/${job}/${hash}`,
    async prepare(context) {
      if (wires) await keepBefore(job, wires)(context);
      await rest.prepare?.(context);
    },
  });
  await ready(page);
  return page;
}

/** Stirs, as somebody who comes to the page does, and waits until the wiring page has come to life. */
export async function ready(page: Page) {
  const awake = page.locator('[data-ready]');
  for (let k = 0; k < 50 && !(await awake.isVisible()); k++) {
    // A move that comes before the page listens is not noticed: people go on moving, and so does this.
    await page.mouse.move(1, 1 + (k % 2));
    await page.waitForTimeout(50);
  }
  await awake.waitFor();
}

/** The board, strip or table view. */
export const choose = (page: Page, view: 'Board' | 'Strip' | 'Table') =>
  page.getByRole('group', { name: 'View' }).getByRole('button', { name: view }).click();

/** A lead or terminal by its name, in the view that is shown. */
export const terminal = (page: Page, id: string) => page.locator(`[data-terminal="${id}"]`).first();

/** What the page says in its status line. */
export const said = (page: Page) => page.getByRole('region', { name: 'The wiring' }).getByRole('status');
