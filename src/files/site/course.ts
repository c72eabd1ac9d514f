import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Layout } from '../../course/layout.ts';
import type { Outline } from '../../course/outline.ts';
import type { Shelf } from '../../course/task.ts';
import { parseRoutes } from '../course-files.ts';
import { layoutFile, makeLayout } from '../layout-file.ts';
import { parseSystem } from '../system.ts';
import { filesIn } from './folder.ts';
import { loadParts } from './lessons.ts';
import { loadQuizzes } from './quizzes.ts';

/** The course as lists and maps need it. */
export function loadOutline(root: string = process.cwd()): Outline {
  const file = 'content/routes.yaml';
  const path = join(root, file);
  const parts = loadParts(root).map(({ lessons, ...part }) => ({
    ...part,
    lessons: lessons.map(({ slug, number, title, summary, minutes, objectives }) => {
      return { slug, number, title, summary, minutes, objectives };
    }),
  }));
  return { parts, routes: existsSync(path) ? parseRoutes(readFileSync(path, 'utf8'), file) : [] };
}

/** Every layout with its right and wrong wirings, each made ready when first asked for, and every quiz. */
export function loadShelf(root?: string): Shelf & { readonly layoutIds: readonly string[] } {
  const files = new Map(
    filesIn('content/systems', '.yaml', root).map(({ name, text }) => [
      name.replace(/\.yaml$/, ''),
      { name, text },
    ]),
  );
  const ready = new Map<string, Layout>();
  const quizzes = new Map(loadQuizzes(root).map((quiz) => [quiz.id, quiz]));
  return {
    layoutIds: [...files.keys()],
    layout(id) {
      const known = ready.get(id);
      if (known) return known;
      const file = files.get(id);
      if (!file) throw new RangeError(`expected a layout in content/systems, found "${id}"`);
      const layout = makeLayout(layoutFile(parseSystem(file.text, file.name)));
      ready.set(id, layout);
      return layout;
    },
    quiz(id) {
      const quiz = quizzes.get(id);
      if (!quiz) throw new RangeError(`expected a quiz in content/quizzes, found "${id}"`);
      return quiz;
    },
  };
}
