import type { Quiz } from '../../course/quiz.ts';
import { FileError, show } from '../error.ts';
import { parseQuiz } from '../quiz.ts';
import { filesIn } from './folder.ts';

const FOLDER = 'content/quizzes';
const ENDING = '.yaml';

/**
 * Every authored quiz, in the order of the files' names.
 * @throws FileError naming the file and the place when one is not sound or is not named after its id
 */
export const loadQuizzes = (root?: string): Quiz[] =>
  filesIn(FOLDER, ENDING, root).map(({ name, text }) => {
    const file = `${FOLDER}/${name}`;
    const quiz = parseQuiz(text, file);
    const expected = name.slice(0, -ENDING.length);
    if (quiz.id !== expected) throw new FileError({ file, place: 'id', expected, found: show(quiz.id) });
    return quiz;
  });
