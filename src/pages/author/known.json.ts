import { makers } from '../../course/items/index.ts';
import { sums } from '../../course/items/sums/index.ts';
import { cardOf } from '../../files/callout-pack.ts';
import { kindOf } from '../../files/job.ts';
import { loadCallouts } from '../../files/site/callouts.ts';
import { loadOutline } from '../../files/site/course.ts';
import { jobPages } from '../../files/site/jobs.ts';
import { loadQuizzes } from '../../files/site/quizzes.ts';
import { siteShelf } from '../../files/site/shelf.ts';
import { systemPages } from '../../files/site/systems.ts';
import type { Known } from '../../ui/author/known.ts';

/** What the course has that a tutor can name in a file of their own. */
export function GET(): Response {
  const known: Known = {
    systems: systemPages().map(({ spec: { id, title }, about }) => ({
      id,
      title,
      alsoCalled: about?.alsoCalled ?? [],
    })),
    jobs: jobPages().map(({ job }) => {
      const { id, title, summary, system } = job;
      return { id, title, summary, system, kind: kindOf(job) };
    }),
    callouts: loadCallouts().map((file) => {
      const { id, title, system, level } = cardOf(siteShelf().layout(file.system), file);
      return { id, title, system, level };
    }),
    lessons: loadOutline().parts.flatMap((part) =>
      part.lessons.map(({ slug, title, summary, minutes, objectives }) => ({
        slug,
        title,
        summary,
        part: part.title,
        minutes,
        objectives: objectives.length,
      })),
    ),
    quizzes: loadQuizzes().map(({ id, title, procedure }) => ({
      id,
      title,
      kind: procedure ? 'order' : 'choice',
    })),
    sums: sums.map(({ id, title }) => ({ id, title })),
    makers: makers.map(({ id, title, needs }) => ({ id, title, needs })),
  };
  return Response.json(known);
}
