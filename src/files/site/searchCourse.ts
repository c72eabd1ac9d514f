import type { Quiz } from '../../course/quiz.ts';
import { capital } from '../../engine/rules/words.ts';
import { type Lesson, loadParts, type Part } from './lessons.ts';
import { plainText } from './plainText.ts';
import { loadQuizzes } from './quizzes.ts';
import type { Entry } from './searchIndex.ts';
import { sectionsOf } from './sections.ts';

/** The steps of an authored procedure, as words. */
const procedureWords = ({ procedure }: Quiz): string =>
  procedure?.steps.map(({ says }) => says).join(' ') ?? '';

/** The procedures that a text prints with `<Steps quiz="…" />`. */
function printedIn(mdx: string, quizzes: ReadonlyMap<string, Quiz>): Quiz[] {
  return [...mdx.matchAll(/<Steps\s[^>]*quiz="([^"]+)"/g)].flatMap(([, id = '']) => quizzes.get(id) ?? []);
}

function lessonEntries(lesson: Lesson, part: Part, quizzes: ReadonlyMap<string, Quiz>): Entry[] {
  const { slug, title, summary, objectives, body } = lesson;
  const aims: Entry = {
    kind: 'Skill',
    to: `/lessons/${slug}/#aims`,
    title: capital(objectives.map(({ says }) => says).join('; ')),
    of: title,
    also: '',
    text: 'What you can do after this lesson.',
  };
  const sections = sectionsOf(body).map(({ heading, anchor, body: mdx }): Entry => {
    const procedures = printedIn(mdx, quizzes);
    const words = `${plainText(mdx)} ${procedures.map(procedureWords).join(' ')}`.trim();
    return {
      kind: 'Lesson',
      to: `/lessons/${slug}/${anchor && `#${anchor}`}`,
      title: heading || title,
      of: heading ? title : part.title,
      also: procedures.map((quiz) => quiz.title).join(', '),
      text: heading ? words : `${summary} ${words}`,
    };
  });
  return [aims, ...sections];
}

/** Every lesson, and each stretch of it under a heading, with the objectives and the procedures that it teaches. */
export function courseEntries(root?: string): Entry[] {
  const quizzes = new Map(loadQuizzes(root).map((quiz) => [quiz.id, quiz]));
  return loadParts(root).flatMap((part) =>
    part.lessons.flatMap((lesson) => lessonEntries(lesson, part, quizzes)),
  );
}
