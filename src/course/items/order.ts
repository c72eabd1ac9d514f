import type { Answer, Judgement, Note } from '../item.ts';
import type { AuthoredStep } from '../quiz.ts';
import { makeRandom, type Random } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';

/** How many steps are shown; on level 3 all of them are. */
const SHOWN: Readonly<Record<Level, number>> = { 1: 4, 2: 6, 3: Number.POSITIVE_INFINITY };

/** One of the orders that keep all constraints, by chance. */
function soundOrder(steps: readonly AuthoredStep[], random: Random): AuthoredStep[] {
  const order: AuthoredStep[] = [];
  while (order.length < steps.length) {
    const ready = steps.filter(
      (step) =>
        !order.includes(step) &&
        (step.after ?? []).every((before) => order.some(({ id }) => id === before.step)),
    );
    order.push(random.pick(ready));
  }
  return order;
}

/** Constraints that both ends of are shown. */
const within = (steps: readonly AuthoredStep[]) =>
  steps.flatMap((step) =>
    (step.after ?? []).flatMap((before) => {
      const first = steps.find(({ id }) => id === before.step);
      return first ? [{ ...before, first, second: step }] : [];
    }),
  );

/**
 * Judges by the constraints, not by one fixed order: a note for every pair that stands the wrong way round, at the
 * step that was done too soon.
 */
function judgeOrder(steps: readonly AuthoredStep[]) {
  const pairs = within(steps);
  return (answer: Answer): Judgement => {
    const given = answer.kind === 'order' ? answer.steps : [];
    const place = (id: string) => given.indexOf(id);
    const notes: Note[] = pairs
      .filter(({ first, second }) => place(second.id) >= 0 && place(first.id) > place(second.id))
      .map(({ first, second, cause, consequence, look }) => ({
        about: second.id,
        cause: `You have “${second.says}” as step ${place(second.id) + 1} and “${first.says}” only as step ${place(first.id) + 1}. ${cause}`,
        consequence,
        look,
      }));
    for (const { id, says } of steps) if (place(id) < 0) notes.push(leftOut(id, says));
    given.forEach((id, at) => {
      const known = steps.find((step) => step.id === id);
      if (!known || place(id) < at) notes.push(tooMany(id, known?.says ?? id, at));
    });
    return { right: notes.length === 0, notes };
  };
}

const leftOut = (id: string, says: string): Note => ({
  about: id,
  cause: `“${says}” is not in your order.`,
  consequence: `The steps that lean on “${says}” would be done without it.`,
  look: `Find the step that needs “${says}”, and put it before that.`,
});

const tooMany = (id: string, says: string, at: number): Note => ({
  about: id,
  cause: `“${says}” stands as step ${at + 1} and is not a step left to do there.`,
  consequence: `Doing “${says}” once more proves nothing new.`,
  look: `Step ${at + 1}: take “${says}” out.`,
});

/** Steps of an authored procedure to put in order. */
export const order: Maker = {
  id: 'order',
  title: 'In which order?',
  needs: 'quiz',
  produces: true,
  make(shelf, task, seed, level) {
    const quiz = shelf.quiz(task.quiz ?? '');
    const { procedure } = quiz;
    if (!procedure)
      throw new RangeError(`expected a quiz with a procedure, found the questions of "${quiz.id}"`);
    const random = makeRandom(seed);
    const sound = soundOrder(procedure.steps, random);
    const count = Math.min(SHOWN[level], sound.length);
    // A stretch of a sound order leaves out no step that stands between two shown ones.
    const from = random.int(sound.length - count + 1);
    const right = sound.slice(from, from + count);
    const pairs = within(right);
    if (!right.every((step) => pairs.some(({ first, second }) => first === step || second === step)))
      return undefined;
    const judge = judgeOrder(right);
    const answer: Answer = { kind: 'order', steps: right.map(({ id }) => id) };
    const shown = random.shuffle(right);
    if (judge({ kind: 'order', steps: shown.map(({ id }) => id) }).right) return undefined;
    const [look, rule] = procedure.hints;
    const [pair] = pairs;
    const step = pair ? `“${pair.first.says}” comes before “${pair.second.says}”.` : procedure.hints[2];
    return {
      id: addressOf(task, seed, level),
      method: `quiz:${quiz.id}`,
      ask: count < sound.length ? `${procedure.ask} These are some of the steps.` : procedure.ask,
      form: { kind: 'order', steps: shown.map(({ id, says }) => ({ id, says })) },
      hints: [look, rule, level === 3 ? procedure.hints[2] : step],
      steps: right.map(({ says }, at) => `${at + 1}. ${says}`),
      answer,
      judge,
    };
  },
};
