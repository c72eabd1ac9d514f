import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { judgePlain } from '../../../src/engine/grade/plain.ts';
import { bitsOf, type System } from '../../../src/engine/model/system.ts';
import { allRules } from '../../../src/engine/rules/index.ts';
import { systemOf, WHOLE, type Wire } from './job.ts';

const system: System = systemOf(WHOLE);

export const judgeButton = (page: Page) => page.getByRole('button', { name: 'Judge my wiring' });
export const verdict = (page: Page) => page.locator('#verdict');
export const judgement = (page: Page) => page.getByRole('region', { name: /^(Accepted|Not yet)$/ });

const ruleOf = (id: string) => {
  const rule = allRules.find((one) => one.id === id);
  if (!rule) throw new Error(`There is no rule ${id}.`);
  return rule;
};
/** A rule as the page names it, kept and broken. */
export const titleOf = (id: string): string => ruleOf(id).title;
export const failsOf = (id: string): string => ruleOf(id).fails;

/** The settings the controls stand at, by input. */
export async function settings(page: Page): Promise<Record<string, string>> {
  const pairs = await page.locator('[data-input]').evaluateAll((buttons) =>
    buttons.map((button) => {
      const words = [...button.children].map((child) => child.textContent?.trim() ?? '');
      return [(button as HTMLElement).dataset.input ?? '', words.at(-1) ?? ''] as const;
    }),
  );
  return Object.fromEntries(pairs);
}

/** Sees the wiring accepted, with as many states as the plain evaluator counts. */
export async function seeAccepted(page: Page, wires: readonly Wire[]): Promise<void> {
  await expect.poll(() => verdict(page).textContent()).toBe('Accepted');
  await expect
    .poll(() => judgement(page).textContent())
    .toContain(`${judgePlain(system, wires).judged.size} states`);
}

/** A way to break a right wiring, and what the judge must say of it. */
export interface Break {
  readonly lift: readonly Wire[];
  readonly land: readonly Wire[];
  /** Id of the rule named first. */
  readonly rule: string;
  /** What must hold of the switches in the failing state; left out for a rule about the wires alone. */
  readonly shows?: (settings: Record<string, string>) => boolean;
}

/** Three breaks, from the facts of the trade: see the mistakes of the same names in the system's file. */
export const BREAKS: Readonly<Record<string, Break>> = {
  'the end switch fed from the live after the cut-out': {
    lift: [['two-port/grey', 'strip/1']],
    land: [['two-port/grey', 'strip/7']],
    rule: 'valve-shut',
    // The motor is fed back while heating runs and hot water no longer calls.
    shows: (s) =>
      s.supply === 'on' &&
      s.heating === 'on' &&
      s.room === 'calling' &&
      (s['hot-water'] === 'off' || s.cylinder === 'satisfied' || s['cut-out'] === 'tripped'),
  },
  'the cut-out bypassed': {
    lift: [],
    land: [['strip/6', 'strip/7']],
    rule: 'valve-shut',
    shows: (s) => s['cut-out'] === 'tripped' && s.cylinder === 'calling' && s['hot-water'] === 'on',
  },
  'the earth of the boiler lifted': { lift: [['boiler/E', 'strip/12']], land: [], rule: 'earthed' },
};

const broken = (wires: readonly Wire[], { lift, land }: Break): readonly Wire[] => [
  ...wires.filter((wire) => !lift.some((gone) => gone.every((end) => wire.includes(end)))),
  ...land,
];

/** Sees the wiring rejected for the right rule, the switches in a state that fails it, and the walk ending there. */
export async function seeRejected(page: Page, right: readonly Wire[], how: Break): Promise<void> {
  await expect.poll(() => verdict(page).textContent()).toBe('Not yet');
  expect(await judgement(page).textContent()).toContain(`Rule: ${titleOf(how.rule)}.`);
  const walk = page.getByRole('group', { name: 'Walk to the failing state' });
  if (!how.shows) {
    expect(await walk.count()).toBe(0);
    return;
  }
  const shown = await settings(page);
  expect(how.shows(shown), JSON.stringify(shown)).toBe(true);
  const failing = judgePlain(system, broken(right, how)).broken.get(how.rule) ?? new Set<number>();
  const inputs = [...failing].map((key) => Math.floor(key / system.places));
  expect(inputs).toContain(bitsOf(system, shown));

  const steps = walk.getByRole('listitem').getByRole('button');
  expect(await steps.last().getAttribute('aria-current')).toBe('step');
  await steps.first().click();
  expect(bitsOf(system, await settings(page))).toBe(0);
  await steps.last().click();
  expect(await settings(page)).toEqual(shown);
}
