import * as z from 'zod';
import { checked } from './checked.ts';
import { filesIn, type TextFile } from './folder.ts';

const frontMatter = z.strictObject({
  title: z.string().min(1),
  summary: z.string().min(1),
  sources: z.array(z.string().min(1)).min(1),
});

/** A lesson: what its file says, and where it stands in the course. */
export interface Lesson extends z.infer<typeof frontMatter> {
  /** The file's name, for finding the compiled page. */
  file: string;
  /** Part of the address; has no number, so that reordering breaks no link. */
  slug: string;
  /** Place in the course, from the two digits that open the file's name. */
  number: number;
  /** MDX below the front matter. */
  body: string;
}

/**
 * Reads one lesson file.
 * @throws Error naming the file when its name or its front matter is wrong
 */
export function parseLesson({ name, text }: TextFile): Lesson {
  const named = /^(\d\d)-([a-z0-9-]+)\.mdx$/.exec(name);
  if (!named) throw new Error(`${name}: expected a name like 01-what-it-is-about.mdx`);
  const parts = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text);
  if (!parts) throw new Error(`${name}: expected front matter between two lines of ---`);
  const data = checked(frontMatter, parts[1] ?? '', name);
  return { ...data, file: name, number: Number(named[1]), slug: named[2] ?? '', body: parts[2] ?? '' };
}

/** Every lesson, in the order of the course. */
export function loadLessons(root?: string): Lesson[] {
  return filesIn('content/lessons', '.mdx', root).map(parseLesson);
}
