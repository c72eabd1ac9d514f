import * as z from 'zod/mini';
import { FileError, show } from './error.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';

// The site's security policy forbids code made from strings, which the validator would otherwise try.
z.config({ jitless: true });

/*
 * Every piece of a schema says in its error what it expects: the same words name it in the published JSON Schema.
 */

/** Text that is not empty. */
export const text = (expected: string) =>
  z.string({ error: expected }).check(z.minLength(1, { error: expected }), z.meta({ description: expected }));

/** Text of a pattern. */
export const pattern = (expected: string, regex: RegExp) =>
  z.string({ error: expected }).check(z.regex(regex, { error: expected }), z.meta({ description: expected }));

/** A list. */
export const list = <T extends z.core.$ZodType>(expected: string, item: T) =>
  z.array(item, { error: expected }).check(z.meta({ description: expected }));

/** Keys of the author's own choosing, all of one kind. */
export const map = <K extends z.core.$ZodRecordKey, V extends z.core.$ZodType>(
  expected: string,
  key: K,
  value: V,
) => z.record(key, value, { error: expected }).check(z.meta({ description: expected }));

/** Exactly these keys. An unknown key is a slip of the author's, so the nearest known one is offered. */
export const keys = <S extends z.core.$ZodShape>(expected: string, shape: S) =>
  z
    .strictObject(shape, {
      error: (issue) =>
        issue.code === 'unrecognized_keys' ? oneOf(issue.keys[0], Object.keys(shape)) : expected,
    })
    .check(z.meta({ description: expected }));

/** Of a choice between shapes, the trouble of the one that fitted best: it went on the longest. */
function deepest(issue: z.core.$ZodIssue): z.core.$ZodIssue {
  if (issue.code !== 'invalid_union') return issue;
  const inside = issue.errors.flatMap(([first]) => (first ? [deepest(first)] : []));
  const [best] = inside.sort((a, b) => b.path.length - a.path.length);
  return best && best.path.length > 0 ? { ...best, path: [...issue.path, ...best.path] } : issue;
}

/**
 * Data checked against a schema.
 * @throws FileError with the first place that does not fit
 */
export function checkShape<T extends z.core.$ZodType>(schema: T, data: unknown, file: string): z.output<T> {
  const result = z.safeParse(schema, data, { reportInput: true });
  if (result.success) return result.data;
  const [first] = result.error.issues.map(deepest).sort(slipsFirst);
  throw first
    ? errorOf(first, file)
    : new FileError({ file, place: placeAt([]), expected: 'data of this format', found: show(data) });
}

/** Every place where data does not fit a schema, for forms that show them all; empty when it fits. */
export function shapeTroubles(schema: z.core.$ZodType, data: unknown, file: string): FileError[] {
  const result = z.safeParse(schema, data, { reportInput: true });
  return result.success
    ? []
    : result.error.issues
        .map(deepest)
        .sort(slipsFirst)
        .map((issue) => errorOf(issue, file));
}

/** A misspelt key explains the missing one, so it goes first. */
const slipsFirst = (a: z.core.$ZodIssue, b: z.core.$ZodIssue): number =>
  Number(b.code === 'unrecognized_keys') - Number(a.code === 'unrecognized_keys');

function errorOf(issue: z.core.$ZodIssue, file: string): FileError {
  const place = placeAt(issue.path);
  if (issue.code === 'unrecognized_keys')
    return new FileError({ file, place, expected: issue.message, found: show(issue.keys[0]) });
  if (issue.code === 'invalid_key') {
    const expected = issue.issues[0]?.message ?? issue.message;
    return new FileError({ file, place, expected, found: show(issue.path.at(-1)) });
  }
  return new FileError({ file, place, expected: issue.message, found: show(issue.input) });
}
