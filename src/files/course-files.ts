import * as z from 'zod/mini';
import { id } from './names.ts';
import { checkShape, keys, list, text } from './shape.ts';
import { parseYaml } from './yaml.ts';

/** The small files of a course: its parts, its routes, its facts. */

const partSchema = keys('a part of the course: title, summary', {
  title: text('a title'),
  summary: text('a summary'),
});

const routesSchema = list(
  'a list of routes',
  keys('a route: id, title, says, lessons', {
    id,
    title: text('a title'),
    says: text('who it is for'),
    lessons: list('a list of lessons', id),
  }),
);

const factsSchema = list(
  'a list of facts',
  keys('a fact: id, says, values, source, confidence', {
    id,
    says: text('the fact in a sentence'),
    values: list('a list of values with their units', text('a value with its unit')),
    source: text('a source, with its edition'),
    confidence: z.enum(['S', 'S2', 'M', 'D'], { error: 'S, S2, M or D' }),
  }),
);

/**
 * A published value: where it comes from, and how sure we are.
 * S: the primary document was read; S2: seen in search results; M: from memory, printed as common practice; D: worked
 * out from one of these.
 */
export type Fact = z.infer<typeof factsSchema>[number];

/** Each throws a FileError naming the file, the place in it, and what was expected. */
export const parsePart = (yaml: string, file: string) => checkShape(partSchema, parseYaml(yaml, file), file);
export const parseRoutes = (yaml: string, file: string) =>
  checkShape(routesSchema, parseYaml(yaml, file), file);
export const parseFacts = (yaml: string, file: string): readonly Fact[] =>
  checkShape(factsSchema, parseYaml(yaml, file), file);
