import * as z from 'zod/mini';
import type { Claim } from '../course/claim.ts';
import type { Objective } from '../course/task.ts';
import { FileError, quote } from './error.ts';
import { id, settings, terminal, wire } from './names.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, map, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

const flag = z.boolean({ error: 'true or false' });
const optional = z.optional;

export const outcome = keys(
  'what comes of it: fires, pumps, heats, works, idle, at, live, dead, rejected, breaks',
  {
    fires: optional(flag),
    pumps: optional(flag),
    heats: optional(list('a list of parts', id)),
    works: optional(list('a list of parts', id)),
    idle: optional(list('a list of parts', id)),
    at: optional(map('positions: part: position', id, text('a position'))),
    live: optional(list('a list of terminals', terminal)),
    dead: optional(list('a list of terminals', terminal)),
    rejected: optional(flag),
    breaks: optional(list('a list of rules', id)),
  },
);

const claim = keys('a claim: says, layout, then', {
  says: text('words that stand in the lesson'),
  layout: id,
  wiring: optional(id),
  lift: optional(list('a list of wires', wire)),
  fail: optional(list('a list of failures', text('a failure: part/failure'))),
  moves: optional(list('a list of changes of settings', settings)),
  then: outcome,
});

const task = keys('a task: make, and layouts, quiz or sum', {
  make: id,
  layouts: optional(list('a list of layouts', id)),
  quiz: optional(id),
  sum: optional(id),
  only: optional(list('a list of parts or mistakes to keep to', id)),
});

const objective = keys('an objective: id, says, tasks', {
  id,
  says: text('what the learner can do, to follow “You can”'),
  tasks: list('a list of tasks', task).check(z.minLength(1, { error: 'at least one task' })),
});

const lessonSchema = keys('a lesson: title, summary, minutes, objectives', {
  title: text('a title'),
  summary: text('a summary'),
  minutes: z.int({ error: 'whole minutes' }).check(z.minimum(1), z.maximum(20)),
  objectives: list('a list of objectives', objective).check(
    z.minLength(1, { error: 'at least one objective' }),
    z.maxLength(3, { error: 'three objectives at most' }),
  ),
  facts: optional(list('a list of ids of content/facts.yaml', id)),
  sources: optional(list('a list of sources', text('a source'))),
  claims: optional(list('a list of claims', claim)),
});

/** What a lesson's file says of it. */
export interface LessonFile {
  readonly title: string;
  readonly summary: string;
  /** About how long it takes, with its questions. */
  readonly minutes: number;
  readonly objectives: readonly Objective[];
  /** Ids of the facts that its numbers come from. */
  readonly facts: readonly string[];
  /** Further sources. */
  readonly sources: readonly string[];
  readonly claims: readonly Claim[];
  /** MDX below the front matter. */
  readonly body: string;
}

/**
 * Reads one lesson file.
 * @throws FileError naming the file, the place in it, and what was expected
 */
export function parseLesson(text: string, file: string): LessonFile {
  const parts = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text);
  if (!parts) {
    const found = quote(text.slice(0, 20));
    throw new FileError({
      file,
      place: placeAt([]),
      expected: 'front matter between two lines of ---',
      found,
    });
  }
  const {
    facts = [],
    sources = [],
    claims = [],
    ...rest
  } = checkShape(lessonSchema, parseYaml(parts[1] ?? '', file), file);
  return { ...rest, facts, sources, claims, body: parts[2] ?? '' } as LessonFile;
}
