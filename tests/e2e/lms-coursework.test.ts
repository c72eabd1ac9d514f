import { describe, expect, test } from 'vitest';
import type { Coursework } from '../../src/course/coursework/coursework.ts';
import { checkButton, click, giveAnswer, itemAt, wrongAnswer } from './support/item.ts';
import { type Cmi, type Launched, LEARNER_12, LEARNER_2004, launch, nextLaunch } from './support/lms.ts';

const rules = { attempts: 2, hints: 3 };
const coursework: Coursework = {
  id: 'on-a-platform',
  title: 'Set on a platform',
  variants: 'own',
  seed: 11,
  tasks: [
    {
      id: 'live',
      kind: 'questions',
      title: 'What is live',
      about: { make: 'live-terminals', layouts: ['three-port'] },
      level: 1,
      count: 2,
      ...rules,
    },
    { id: 'wire', kind: 'job', job: 'unvented-three-port-switching', ...rules },
  ],
};
const work = { kind: 'coursework', coursework } as const;
const before = { 'scorm-1.2': LEARNER_12, 'scorm-2004': LEARNER_2004 } as const;

const standing = ({ frame }: Launched) => frame.locator('#standing').textContent();
const reported = ({ frame }: Launched) => frame.locator('#reported').textContent();

/** Goes to a thing to do, by its address in the sitting. */
async function goTo({ site }: Launched, slot: string) {
  await site.locator('[data-sitting], [data-item], [data-left]').first().waitFor();
  await site.locator('body').evaluate((_, to) => {
    location.hash = to;
  }, `#sitting=on-a-platform+ANN-7&slot=${slot}`);
}

async function answer(launched: Launched, slot: string, isRight: boolean) {
  await goTo(launched, slot);
  const question = launched.site.locator('.question[data-item]');
  const item = itemAt((await question.getAttribute('data-item')) ?? '');
  await giveAnswer(question, item.form, isRight ? item.answer : wrongAnswer(item), click);
  await checkButton(question).click();
  await question.locator(`[data-right="${isRight}"]`).waitFor();
}

/** Lands one lead more, and has the wiring judged. */
async function wire(launched: Launched) {
  await goTo(launched, 'wire/1');
  const { site } = launched;
  await site
    .getByRole('button', { name: /^Judge/ })
    .first()
    .click();
  await site.locator('div[data-left="1"]').waitFor();
}

describe.each(['scorm-1.2', 'scorm-2004'] as const)('a coursework in a platform of %s', (standard) => {
  const is12 = standard === 'scorm-1.2';
  const told = (cmi: Cmi) => {
    const core = (is12 ? cmi.core : cmi) as Cmi;
    return {
      raw: Number((core.score as Cmi).raw),
      status: is12 ? core.lesson_status : `${core.completion_status} ${core.success_status}`,
      place: String(is12 ? core.lesson_location : core.location),
    };
  };

  test('questions and a wiring are told with what was answered, and come back on another device', async () => {
    const first = await launch({ standard, work, before: before[standard] });
    await expect.poll(() => standing(first)).toBe('0 of 3 right');
    await first.site.getByRole('heading', { name: 'Set on a platform' }).waitFor();
    await answer(first, 'live/1', true);
    await expect.poll(() => standing(first)).toBe('1 of 3 right');
    await answer(first, 'live/2', false);
    await wire(first);
    await expect
      .poll(async () => (await first.calls()).some((call) => /interactions\.2\.latency/.test(call)))
      .toBe(true);
    expect(await reported(first)).toMatch(/^Reported/);
    const { raw, status, place } = told(await first.cmi());
    expect(raw).toBeCloseTo(33.33, 1);
    expect(status).toBe(is12 ? 'incomplete' : 'incomplete unknown');
    expect(place).toBe('/coursework/#slot=wire/1');
    const calls = await first.calls();
    const responses = calls.filter((call) => /_response /.test(call));
    expect(responses).toHaveLength(3);
    expect(responses[0]).toContain('strip/');
    expect(calls.filter((call) => /\.result /.test(call)).map((call) => call.split(' ').at(-1))).toEqual([
      'correct',
      is12 ? 'wrong' : 'incorrect',
      is12 ? 'wrong' : 'incorrect',
    ]);
    await first.close();
    await expect.poll(async () => (await first.calls()).at(-1)).toMatch(/^(LMSFinish|Terminate)$/);
    expect(await first.breaches()).toEqual([]);

    const second = await launch({ standard, work, before: nextLaunch(standard, await first.cmi()) });
    await expect.poll(() => standing(second)).toBe('1 of 3 right');
    // The bookmark leads back to where it was left.
    await second.site.locator('.slot[data-slot="wire/1"]').waitFor();
    await second.site.locator('div[data-left="1"]').waitFor();
    // The second question has one go left, and nobody asks who this is.
    await goTo(second, 'live/2');
    await second.site.getByRole('button', { name: 'Another go, with a new question' }).click();
    await second.site.locator('[data-attempt="2"]').waitFor();
    await answer(second, 'live/2', true);
    await expect.poll(() => standing(second)).toBe('2 of 3 right');
    await wireLast(second);
    // Nothing is left that could be answered, and not all is right.
    await expect.poll(async () => told(await second.cmi()).status).toBe(is12 ? 'failed' : 'completed failed');
    expect(await second.breaches()).toEqual([]);
  });
});

/** The last go at the job: a lead is moved first, for an unchanged wiring costs nothing. */
async function wireLast(launched: Launched) {
  await goTo(launched, 'wire/1');
  const { site } = launched;
  await site.getByRole('button', { name: /^Undo/ }).first().waitFor();
  await site.locator('[data-terminal]').nth(2).click();
  await site.locator('[data-terminal^="strip/"]').nth(4).click();
  await site
    .getByRole('button', { name: /^Judge/ })
    .first()
    .click();
  await site.locator('div[data-left="0"]').waitFor();
}
