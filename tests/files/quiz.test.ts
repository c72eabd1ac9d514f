import { describe, expect, test } from 'vitest';
import { parseQuiz } from '../../src/files/quiz.ts';
import { loadQuizzes } from '../../src/files/site/quizzes.ts';

const hints = 'hints: [look, rule, step]';
const wrong = (id: string, more = '') =>
  `      - { id: ${id}, says: ${id}, cause: c ${id}, consequence: q ${id}, look: l ${id}${more} }`;
const right = '      - { id: r, says: r, right: true }';

const choiceWith = (...options: string[]) => `
id: a
title: A
source: common practice
choices:
  - id: q
    ask: Which?
    ${hints}
    steps: [So.]
    options:
${options.join('\n')}
`;
const sound = choiceWith(right, wrong('x'), wrong('y'), wrong('z'));

const behind = (step: string) => `, after: [{ step: ${step}, cause: c, consequence: q, look: l }]`;
const procedureWith = (...steps: string[]) => `
id: a
title: A
source: common practice
procedure:
  ask: In which order?
  ${hints}
  steps:
${steps.map((step) => `    - { ${step} }`).join('\n')}
`;
const chain = procedureWith('id: i, says: i', `id: j, says: j${behind('i')}`, `id: k, says: k${behind('j')}`);

const refused = (yaml: string) => {
  try {
    parseQuiz(yaml, 'a.yaml');
  } catch (error) {
    return (error as Error).message;
  }
  return 'accepted';
};

test('a question and a procedure are read as they stand', () => {
  expect(parseQuiz(sound, 'a.yaml').choices?.[0]?.options).toHaveLength(4);
  expect(parseQuiz(chain, 'a.yaml').procedure?.steps.map(({ id }) => id)).toEqual(['i', 'j', 'k']);
});

describe('a question is refused, with the place, when', () => {
  test.each([
    [
      'a wrong option does not say where to look',
      choiceWith(right, wrong('x'), wrong('y'), '      - { id: z, says: z, cause: c, consequence: q }'),
      'a.yaml: choices[0].options[3].look: expected where to look, found nothing',
    ],
    [
      'it has two wrong options only',
      choiceWith(right, wrong('x'), wrong('y')),
      'a.yaml: choices[0].options: expected at least 3 wrong options, found 2',
    ],
    [
      'an option stands twice',
      choiceWith(right, wrong('x'), wrong('y'), wrong('x')),
      'a.yaml: choices[0].options[3].id: expected an id that no other has, found "x"',
    ],
    [
      'no option is right',
      choiceWith(wrong('w'), wrong('x'), wrong('y'), wrong('z')),
      'a.yaml: choices[0].options: expected one right option, found 0',
    ],
    [
      'two wrong options say the same of what comes of them',
      sound.replace('consequence: q y', 'consequence: q x'),
      'a.yaml: choices[0].options[2].consequence: expected words that no other option has, found "q x"',
    ],
    [
      'a key is misspelt',
      sound.replace('ask: Which?', 'aks: Which?'),
      'a.yaml: choices[0]: expected one of id, ask, many, options, hints, steps (did you mean "ask"?), found "aks"',
    ],
    [
      'a hint is missing',
      sound.replace(hints, 'hints: [look, rule]'),
      'a.yaml: choices[0].hints: expected three hints: where to look, which rule, the step itself, found a list of 2',
    ],
  ])('%s', (_, yaml, message) => {
    expect(refused(yaml)).toBe(message);
  });
});

test('where several options hold, each right one says why it may not be left out', () => {
  const many = sound.replace('ask: Which?', 'ask: Which?\n    many: true');
  expect(refused(many)).toBe('a.yaml: choices[0].options[0].cause: expected why it is so, found nothing');
  expect(refused(many.replace('right: true', 'right: true, cause: c r, consequence: q r, look: l r'))).toBe(
    'accepted',
  );
});

describe('a procedure is refused, with the place, when', () => {
  test.each([
    [
      'a step comes after one that is not there',
      chain.replace('step: j', 'step: jj'),
      'a.yaml: procedure.steps[2].after[0].step: expected one of i, j, k, found "jj"',
    ],
    [
      'its steps need each other in a circle',
      procedureWith(
        `id: i, says: i${behind('k')}`,
        `id: j, says: j${behind('i')}`,
        `id: k, says: k${behind('j')}`,
      ),
      'a.yaml: procedure.steps[0].after[0].step: expected a step that stands above i, found "k"',
    ],
    [
      'a step is bound to no other',
      procedureWith('id: i, says: i', `id: j, says: j${behind('i')}`, 'id: k, says: k'),
      'a.yaml: procedure.steps[2].after: expected a step that this one comes after, or before, found nothing',
    ],
    [
      'it has two steps only',
      procedureWith('id: i, says: i', `id: j, says: j${behind('i')}`),
      'a.yaml: procedure.steps: expected at least 3 steps, found 2',
    ],
  ])('%s', (_, yaml, message) => {
    expect(refused(yaml)).toBe(message);
  });
});

test('a quiz has either questions or a procedure', () => {
  expect(refused('id: a\ntitle: A\nsource: common practice\n')).toBe(
    'a.yaml: top level: expected either choices or procedure, found neither',
  );
  const both = `${sound}${chain.slice(chain.indexOf('procedure:'))}`;
  expect(refused(both)).toBe('a.yaml: top level: expected either choices or procedure, found both');
});

test('every quiz of the course is sound and is named after its file', () => {
  const quizzes = loadQuizzes();
  expect(quizzes.length).toBeGreaterThanOrEqual(18);
  expect(new Set(quizzes.map(({ id }) => id)).size).toBe(quizzes.length);
});
