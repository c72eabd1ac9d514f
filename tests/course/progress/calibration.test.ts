import { expect, test } from 'vitest';
import { calibrationOf } from '../../../src/course/progress/calibration.ts';
import { cardOf, recallAt } from '../../../src/course/progress/revision.ts';
import { makeRandom } from '../../../src/course/random.ts';
import type { Trial } from '../../../src/course/trial.ts';
import { answers, DAY, START, trial } from './support.ts';

/** A learner of 60 objectives who recalls with just the chance that the estimate gives, times `bias`. */
function learner(bias: number): Trial[] {
  const random = makeRandom(11);
  return Array.from({ length: 60 }, (_, k) => {
    const log: Trial[] = answers('R', { objective: `o${k}` });
    for (let n = 0; n < 8; n++) {
      const card = cardOf(log);
      if (!card) continue;
      const at = Math.ceil(card.last + DAY * (1 + random.next() * 2 * card.gap));
      log.push(trial({ objective: `o${k}`, at, right: random.next() < bias * recallAt(card, at) }));
    }
    return log;
  }).flat();
}

test('A learner who recalls as estimated is shown to: in every well-filled range and over all', () => {
  const { bins, predicted, happened, answers: count, enough } = calibrationOf(learner(1));
  expect(count).toBe(480);
  expect(enough).toBe(true);
  expect(Math.abs(predicted - happened)).toBeLessThan(0.04);
  for (const bin of bins) {
    expect(bin.predicted).toBeGreaterThanOrEqual(bin.from);
    expect(bin.predicted).toBeLessThanOrEqual(bin.below);
    // Three standard errors of a share.
    const slack = 3 * Math.sqrt(0.25 / bin.answers);
    expect(Math.abs(bin.predicted - bin.happened)).toBeLessThan(slack);
  }
});

test('A learner who recalls less than estimated is shown to', () => {
  const { predicted, happened } = calibrationOf(learner(0.7));
  expect(predicted - happened).toBeGreaterThan(0.1);
});

test('Answers on the same day, second goes and few answers say nothing', () => {
  expect(calibrationOf(answers('RRRWWR'))).toMatchObject({ answers: 0, bins: [], enough: false });
  const [first] = answers('R');
  const again = trial({ item: first?.item ?? '', attempt: 2, at: START + 9 * DAY });
  expect(calibrationOf([first ?? trial(), again]).answers).toBe(0);
  expect(calibrationOf([...answers('R'), trial({ at: START + 9 * DAY })])).toMatchObject({
    answers: 1,
    enough: false,
  });
});
