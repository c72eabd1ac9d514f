import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Fact, parseFacts, parsePart } from '../course-files.ts';
import { type LessonFile, parseLesson } from '../lesson.ts';
import { filesIn } from './folder.ts';

/** A lesson: what its file says, and where it stands in the course. */
export interface Lesson extends LessonFile {
  /** From the project's root, for finding the compiled page. */
  readonly file: string;
  /** Part of the address; has no number, so that reordering breaks no link. */
  readonly slug: string;
  /** Place in the course, from 1. */
  readonly number: number;
  /** Id of its part. */
  readonly part: string;
}

/** A part of the course: a folder of lessons. */
export interface Part {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly summary: string;
  readonly lessons: readonly Lesson[];
}

const FOLDER = 'content/lessons';

/** The name without its place: `02-first-things` is `first-things`. */
function unnumbered(name: string, path: string): string {
  const named = /^\d\d-([a-z0-9-]+)$/.exec(name);
  if (!named)
    throw new Error(`${path}: expected a name that opens with two digits, like 01-what-it-is-about`);
  return named[1] ?? '';
}

/**
 * The parts of the course in order, each with its lessons: two digits that open the names of folders and files give
 * the order, and nothing else lists them. Parts without a lesson are left out.
 * @throws Error naming the file when a name or the front matter is wrong, or when two lessons have one address
 */
export function loadParts(root: string = process.cwd()): Part[] {
  const folders = readdirSync(join(root, FOLDER), { withFileTypes: true });
  const seen = new Map<string, string>();
  let count = 0;
  return folders
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort()
    .map((name) => {
      const folder = `${FOLDER}/${name}`;
      const file = `${folder}/part.yaml`;
      const lessons = filesIn(folder, '.mdx', root).map((entry): Lesson => {
        const path = `${folder}/${entry.name}`;
        const slug = unnumbered(entry.name.replace(/\.mdx$/, ''), path);
        const other = seen.get(slug);
        if (other) throw new Error(`${path}: expected an address of its own, found that of ${other}`);
        seen.set(slug, path);
        count++;
        return {
          ...parseLesson(entry.text, path),
          file: path,
          slug,
          number: count,
          part: unnumbered(name, folder),
        };
      });
      return {
        id: unnumbered(name, folder),
        ...parsePart(readFileSync(join(root, file), 'utf8'), file),
        lessons,
      };
    })
    .filter(({ lessons }) => lessons.length > 0)
    .map((part, at) => ({ ...part, number: at + 1 }));
}

/** Every lesson, in the order of the course. */
export const loadLessons = (root?: string): Lesson[] => loadParts(root).flatMap(({ lessons }) => lessons);

/** The facts that numbers in lessons come from, by id. */
export function loadFacts(root: string = process.cwd()): ReadonlyMap<string, Fact> {
  const file = 'content/facts.yaml';
  const path = join(root, file);
  if (!existsSync(path)) return new Map();
  return new Map(parseFacts(readFileSync(path, 'utf8'), file).map((fact) => [fact.id, fact]));
}
