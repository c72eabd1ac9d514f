import type { AuthoredChoice, AuthoredOption } from '../quiz.ts';
import { makeRandom, type Random } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick } from './pick.ts';

/** How many wrong options stand beside the right ones; on level 3 all of them do. */
const SHOWN_WRONG = 3;

function optionsOf({ options }: AuthoredChoice, random: Random, level: Level): Option[] {
  const wrong = random.shuffle(options.filter(({ right }) => !right));
  const shown = new Set(level === 3 ? wrong : wrong.slice(0, SHOWN_WRONG));
  return random.shuffle(options.filter((option) => option.right || shown.has(option))).map((option) => ({
    id: option.id,
    says: option.says,
    right: option.right === true,
    why: () => wordsOf(option),
  }));
}

/** The parser has seen to it that every option that can be judged wrongly says all three. */
const wordsOf = ({ cause = '', consequence = '', look = '' }: AuthoredOption) => ({
  cause,
  consequence,
  look,
});

/** One question of an authored quiz, with some of its wrong options. */
export const choice: Maker = {
  id: 'choice',
  title: 'Which answer holds?',
  needs: 'quiz',
  produces: false,
  make(shelf, task, seed, level) {
    const quiz = shelf.quiz(task.quiz ?? '');
    if (!quiz.choices)
      throw new RangeError(`expected a quiz with questions, found the procedure "${quiz.id}"`);
    const random = makeRandom(seed);
    const question = random.pick(quiz.choices);
    const many = question.many === true;
    const options = optionsOf(question, random, level);
    return {
      id: addressOf(task, seed, level),
      method: `quiz:${quiz.id}`,
      ask: question.ask,
      form: pickForm(options, many),
      hints: question.hints,
      steps: question.steps,
      answer: rightPick(options),
      judge: judgePick(options, many),
    };
  },
};
