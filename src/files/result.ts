import * as z from 'zod/mini';
import type { Result, Sitting } from '../course/coursework/work.ts';
import { seedOf } from '../course/random.ts';
import { courseworkSchema, readCoursework } from './coursework-schema.ts';
import { FileError, show } from './error.ts';
import { parseJson } from './json.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, pattern } from './shape.ts';
import { learnerSchema, MOST_WORK, workSchema } from './work-schema.ts';

/** A result file has at most so many letters. */
export const MOST_RESULT = 2_000_000;

const time = z
  .number({ error: 'milliseconds since 1970' })
  .check(
    z.gte(0, { error: 'milliseconds since 1970' }),
    z.lte(8.64e15, { error: 'milliseconds since 1970' }),
  );
const manyWorks = `a list of at most ${MOST_WORK} pieces of work`;

const handed = keys('what is handed in: coursework, learner, begun, work', {
  coursework: courseworkSchema,
  learner: learnerSchema,
  begun: time,
  work: list(manyWorks, workSchema).check(z.maxLength(MOST_WORK, { error: manyWorks })),
});

const versionSays = '1, the version of the format';
/**
 * A result file. Colleges keep these for years and may add keys of their own beside these four: they are passed over.
 * Inside `handed` every key is known.
 */
export const resultSchema = z
  .object(
    {
      result: z.literal(1, { error: versionSays }).check(z.meta({ description: versionSays })),
      made: time,
      checksum: pattern('a checksum: 8 digits or letters from a to f', /^[0-9a-f]{8}$/),
      handed,
    },
    { error: 'a result: result, made, checksum, handed' },
  )
  .check(
    z.meta({
      title: 'Result',
      description:
        'What a learner hands in: everything that was done, to be graded again. The checksum is FNV-1a over the UTF-16 units of `handed` as compact JSON. It shows damage on the way; it protects nothing, and nothing is believed because of it.',
    }),
  );

const checksumOf = (data: unknown): string => seedOf(JSON.stringify(data)).toString(16).padStart(8, '0');

/**
 * The text of a result file.
 * @param made milliseconds since 1970
 */
export function writeResult(
  { coursework, learner, begun, work }: Omit<Sitting, 'id' | 'at'>,
  made: number,
): string {
  // As it will be read: what JSON leaves out must not count.
  const data: unknown = JSON.parse(JSON.stringify({ coursework, learner, begun, work }));
  return `${JSON.stringify({ result: 1, made, checksum: checksumOf(data), handed: data })}\n`;
}

/**
 * A result out of a file's text. Marks in it are what the page told the learner: grade again.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseResult(json: string, file: string): Result {
  const fail = (place: readonly PropertyKey[], expected: string, found: string): never => {
    throw new FileError({ file, place: placeAt(place), expected, found });
  };
  if (json.length > MOST_RESULT) fail([], `at most ${MOST_RESULT / 1e6} MB`, 'more');
  const data = parseJson(json, file);
  const given = (data as { handed?: Record<string, unknown> } | null)?.handed;
  // Counted first: the schema would look at every one of a million before it minds their number.
  if (Array.isArray(given?.work) && given.work.length > MOST_WORK)
    fail(['handed', 'work'], manyWorks, show(given.work));
  const { made, checksum, handed: sound } = checkShape(resultSchema, data, file);
  const coursework = readCoursework(sound.coursework, `${file}: handed.coursework`);
  const real = checksumOf(given);
  if (real !== checksum) fail(['checksum'], `${real}, as what is handed in gives`, show(checksum));
  return { ...sound, coursework, made } as Result;
}
