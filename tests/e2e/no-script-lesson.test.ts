import { expect, test } from 'vitest';
import { makeItem } from '../../src/course/items/index.ts';
import { lessonsOf } from '../../src/course/outline.ts';
import { seedOf } from '../../src/course/random.ts';
import type { Objective } from '../../src/course/task.ts';
import { loadOutline, loadShelf } from '../../src/files/site/course.ts';
import { openPage } from './support/browser.ts';

const shelf = loadShelf();
/** A lesson near the start of the course, one in its middle and one at its end, of different parts. */
const parts = loadOutline().parts.filter(({ lessons }) => lessons.length > 0);
const three = [parts[1], parts[Math.floor(parts.length / 2)], parts.at(-1)].flatMap((part) =>
  part ? lessonsOf({ parts: [part], routes: [] }).slice(-1) : [],
);
const flat = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ');

/** What the page's first question on an objective is, made as the site makes it. */
function firstQuestion({ id, tasks }: Objective) {
  const [task] = tasks;
  if (!task) throw new Error(`The objective ${id} has no task.`);
  return makeItem(shelf, task, seedOf(id), 1);
}

test.each(three.map((lesson) => [lesson.title, lesson] as const))(
  'With scripts switched off, “%s” can be read: its text, its worked example, its question and the answer',
  async (title, { slug, objectives }) => {
    const page = await openPage({ path: `/lessons/${slug}/`, scripts: false });
    const article = page.getByRole('article');
    expect(flat(await page.locator('h1:visible').textContent()).replaceAll('‑', '-')).toBe(title);
    // Letters in sight; the shortest lesson has about 400 words.
    const inSight = await article.locator('p:visible, li:visible').allTextContents();
    expect(inSight.join(' ').length).toBeGreaterThan(1500);

    const worked = article.locator('.worked').first();
    expect(await worked.getByRole('listitem').last().isVisible()).toBe(true);
    expect(await worked.getByText('Answer:').isVisible()).toBe(true);

    const [objective] = objectives;
    if (!objective) throw new Error(`${slug} has no objective`);
    const { ask, steps } = firstQuestion(objective);
    const check = page.locator(`[data-objective="${objective.id}"]`);
    expect(await check.getByText(ask).first().isVisible()).toBe(true);
    const answer = check.locator('details', { hasText: 'The answer' });
    const last = answer.getByRole('listitem').last();
    expect(await last.isVisible()).toBe(false);
    await answer.locator('summary').click();
    expect(await last.isVisible()).toBe(true);
    expect(flat(await last.textContent())).toBe(flat(steps.at(-1) ?? ''));
  },
);
