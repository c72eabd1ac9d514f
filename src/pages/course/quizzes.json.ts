import { loadQuizzes } from '../../files/site/quizzes.ts';

/** Every authored quiz, for whoever asks questions in the browser. */
export const GET = (): Response => Response.json(loadQuizzes());
