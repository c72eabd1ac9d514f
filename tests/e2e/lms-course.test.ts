import { describe, expect, test } from 'vitest';
import { lessonsOf, objectivesOf } from '../../src/course/outline.ts';
import { loadOutline } from '../../src/files/site/course.ts';
import { packCourse } from '../../src/ui/lms/suspend/course.ts';
import { seeNoViolation } from './support/axe.ts';
import { openPage } from './support/browser.ts';
import { checkButton, click, giveAnswer, itemAt, resultOf } from './support/item.ts';
import { type Cmi, type Launched, LEARNER_12, LEARNER_2004, launch, nextLaunch } from './support/lms.ts';
import { smallTargets } from './support/measure.ts';

const outline = loadOutline();
const all = objectivesOf(outline).length;
const lesson = lessonsOf(outline).find(
  ({ objectives: [first] }) => first?.tasks[0]?.make === 'live-terminals',
);
if (!lesson) throw new Error('No lesson begins with live terminals.');
const [objective] = lesson.objectives;
const work = { kind: 'course', title: 'Switched Live' } as const;
const before = { 'scorm-1.2': LEARNER_12, 'scorm-2004': LEARNER_2004 } as const;

const standing = ({ frame }: Launched) => frame.locator('#standing').textContent();
const reported = ({ frame }: Launched) => frame.locator('#reported').textContent();

/** Wakes the lesson's first check, which then says how many answers it knows of, and answers it rightly. */
async function answer({ site }: Launched, known: number) {
  const check = site.locator(`[data-objective="${objective?.id}"]`);
  await check.getByRole('button', { name: /hint/ }).focus();
  if (known > 0) await check.getByText(`${known} of ${known} right without help`).waitFor();
  await check.locator('.player[aria-busy="false"]').waitFor();
  const link = await check.getByRole('link', { name: 'Link to this question' }).getAttribute('href');
  const item = itemAt(decodeURIComponent(link?.split('#item=')[1] ?? ''));
  await giveAnswer(check, item.form, item.answer, click);
  await checkButton(check).click();
  await expect.poll(() => resultOf(check).getAttribute('data-right')).toBe('true');
}

/** Two right answers of yesterday, as the platform has kept them: a third makes the objective solid. */
const twoBefore = packCourse(
  {
    trials: [1, 2].map((hours) => ({
      at: Date.now() - (20 + hours) * 3_600_000,
      objective: objective?.id ?? '',
      item: `live-terminals/three-port/${hours}/1`,
      method: 'live-terminals',
      right: true,
      attempt: 1,
      hints: 0,
      shown: 0,
      took: 9000,
      mode: 'lesson' as const,
    })),
    choices: {},
  },
  4096,
);

const goTo = async ({ site, frame }: Launched, path: string) => {
  await frame.locator('#site:visible').waitFor();
  await site.locator('main').waitFor();
  await site.locator('body').evaluate((_, to) => location.assign(to), path);
  await site.locator(`[data-objective="${objective?.id}"]`).waitFor();
};

describe.each(['scorm-1.2', 'scorm-2004'] as const)('the course in a platform of %s', (standard) => {
  const is12 = standard === 'scorm-1.2';
  const told = (cmi: Cmi) => {
    const core = (is12 ? cmi.core : cmi) as Cmi;
    const score = core.score as Cmi;
    return {
      raw: Number(score.raw),
      status: is12 ? core.lesson_status : core.completion_status,
      place: is12 ? core.lesson_location : core.location,
    };
  };

  test('what is answered in the frame is told, and comes back on another device', async () => {
    const first = await launch({ standard, work, before: { ...before[standard], suspend_data: twoBefore } });
    expect(await first.site.locator('h1').first().textContent()).not.toBe('');
    await expect.poll(() => standing(first)).toBe(`0 of ${all} solid`);
    await goTo(first, `/lessons/${lesson.slug}/`);
    await answer(first, 2);
    await expect.poll(() => standing(first)).toBe(`1 of ${all} solid`);
    expect(await reported(first)).toMatch(/^Reported \d\d:\d\d$/);
    const cmi = await first.cmi();
    expect(told(cmi).raw).toBeCloseTo(100 / all, 1);
    expect(told(cmi)).toMatchObject({ status: 'incomplete', place: `/lessons/${lesson.slug}/` });
    const calls = await first.calls();
    const ids = calls.filter((call) => /interactions\.\d+\.id /.test(call));
    expect(ids).toHaveLength(1);
    expect(calls.filter((call) => /interactions\.\d+\.result correct$/.test(call))).toHaveLength(1);
    await first.close();
    await expect.poll(async () => (await first.calls()).at(-1)).toMatch(/^(LMSFinish|Terminate)$/);
    expect(await first.breaches()).toEqual([]);
    const kept = nextLaunch(standard, await first.cmi());

    // Another browser: nothing is on the device but what the platform gives back.
    const second = await launch({ standard, work, before: kept });
    await expect.poll(() => standing(second)).toBe(`1 of ${all} solid`);
    await second.site.locator(`[data-objective="${objective?.id}"]`).waitFor();
    await second.site.locator('body').evaluate(() => location.assign('/progress/'));
    const glance = second.site.getByRole('region', { name: 'At a glance' });
    await expect.poll(() => glance.locator('.count').first().textContent()).toBe('1');
    // What came back is known to the platform: it is not told a second time.
    expect((await second.calls()).filter((call) => /interactions\.\d+\.id /.test(call))).toEqual([]);
    expect(await second.breaches()).toEqual([]);
  });

  test('a platform that fails is told of, nothing is lost, and it is told again when it can', async () => {
    const launched = await launch({ standard, work, before: before[standard] });
    await expect.poll(() => reported(launched)).toMatch(/^Reported/);
    await launched.fail(is12 ? 'LMSCommit' : 'Commit', 'throw');
    await goTo(launched, `/lessons/${lesson.slug}/`);
    await answer(launched, 0);
    await expect.poll(() => reported(launched)).toBe('Not reported');
    const notice = launched.frame.locator('#notice');
    expect(await notice.textContent()).toMatch(/It stays on this device.*the session is gone/s);
    await launched.fail(is12 ? 'LMSCommit' : 'Commit', undefined);
    // The next thing that happens tells it all.
    await launched.site.locator('body').evaluate(() => location.assign('/progress/'));
    await launched.site.locator('[data-ready]').waitFor();
    await launched.frame
      .locator('body')
      .evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await expect.poll(() => reported(launched)).toMatch(/^Reported/);
    const told = (await launched.calls()).filter((call) => /interactions\.0\.result/.test(call));
    expect(told).toHaveLength(1);
    expect(await launched.breaches()).toEqual([]);
  });

  test('opened for review nothing is told but the time', async () => {
    const mode = is12
      ? { core: { ...LEARNER_12.core, lesson_mode: 'review' } }
      : { ...LEARNER_2004, mode: 'review' };
    const launched = await launch({ standard, work, before: mode });
    await expect.poll(() => reported(launched)).toBe('Opened for review: nothing is reported');
    await goTo(launched, `/lessons/${lesson.slug}/`);
    await answer(launched, 0);
    await launched.close();
    await expect.poll(async () => (await launched.calls()).at(-1)).toMatch(/^(LMSFinish|Terminate)$/);
    const written = (await launched.calls()).filter((call) => /SetValue/.test(call));
    expect(written.every((call) => /session_time|exit/.test(call))).toBe(true);
  });

  test('Save and leave ends the session once and says so', async () => {
    const launched = await launch({ standard, work, before: before[standard] });
    await launched.frame.getByRole('button', { name: 'Save and leave' }).click();
    await launched.frame.getByRole('heading', { name: 'You have left' }).waitFor();
    await launched.close();
    const ends = (await launched.calls()).filter((call) => /^(LMSFinish|Terminate)$/.test(call));
    expect(ends).toHaveLength(1);
    expect(await launched.breaches()).toEqual([]);
  });
});

test('learners who share a device do not see each other’s work', async () => {
  const first = await launch({ standard: 'scorm-1.2', work, before: LEARNER_12 });
  await goTo(first, `/lessons/${lesson.slug}/`);
  await answer(first, 0);
  const databases = () =>
    first.page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name ?? ''));
  expect((await databases()).filter((name) => /^switched-live~/.test(name))).toHaveLength(1);
  expect(await databases()).not.toContain('switched-live');
});

describe('without a platform', () => {
  test('the page says what is missing, and the site can be used without', async () => {
    const page = await openPage({ path: '/launch/' });
    await page.getByRole('heading', { name: 'Not connected' }).waitFor();
    expect(await page.getByText('this is not one').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Go on without' }).click();
    await page.frameLocator('#site').locator('h1').first().waitFor();
    expect(await page.locator('#reported').textContent()).toBe('Nothing is reported');
  });

  test.each([
    ['a laptop', { width: 1366, height: 768 }],
    ['a phone', { width: 360, height: 800, touch: true }],
  ])('on %s axe finds nothing and everything can be hit', async (_, size) => {
    const page = await openPage({ ...size, path: '/launch/' });
    await page.getByRole('heading', { name: 'Not connected' }).waitFor();
    await seeNoViolation(page, 'not connected');
    expect(await smallTargets(page)).toEqual([]);
    await page.getByRole('button', { name: 'Go on without' }).click();
    await page.frameLocator('#site').locator('h1').first().waitFor();
    await seeNoViolation(page, 'in use');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
  });
});
