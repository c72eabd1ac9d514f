import * as z from 'zod/mini';
import type { KeptVisit } from '../course/callouts/kept-visit.ts';
import type { Sitting } from '../course/coursework/work.ts';
import { seedOf } from '../course/random.ts';
import { courseworkSchema } from './coursework-schema.ts';
import { FileError, show } from './error.ts';
import { parseJson } from './json.ts';
import { placeAt } from './place.ts';
import { checkShape, keys, list, map, pattern, text } from './shape.ts';
import { actsSchema } from './visit.ts';
import { learnerSchema, MOST_WORK, workSchema } from './work-schema.ts';

/** A backup file has at most so many bytes, and holds so many answers, begun answers, visits, courseworks begun, and wirings and benches. */
export const MOST_BACKUP_BYTES = 20_000_000;
export const MOST_TRIALS = 50_000;
export const MOST_DRAFTS = 2000;
export const MOST_VISITS = 1000;
export const MOST_SITTINGS = 200;
export const MOST_PLACES = 2000;

/** Letters of a name: an address may name every layout. */
const MOST_NAME = 2000;

const name = (expected: string) => text(expected).check(z.maxLength(MOST_NAME, { error: expected }));
const count = (expected: string, most = Number.MAX_SAFE_INTEGER) =>
  z
    .int({ error: expected })
    .check(
      z.gte(0, { error: expected }),
      z.lte(most, { error: expected }),
      z.meta({ description: expected }),
    );
const milliseconds = (expected: string, most = Number.MAX_SAFE_INTEGER) =>
  z
    .number({ error: expected })
    .check(
      z.gte(0, { error: expected }),
      z.lte(most, { error: expected }),
      z.meta({ description: expected }),
    );
/** Up to the last moment that a date can have. */
const time = milliseconds('milliseconds since 1970', 8.64e15);

const MODES = ['lesson', 'practice', 'revision', 'test-out', 'before', 'after', 'callout'] as const;
const trial = keys('an answer: at, objective, item, method, right, attempt, hints, shown, took, mode', {
  at: time,
  objective: name('the id of an objective'),
  item: name('the address of a question'),
  method: name('a method'),
  right: z.boolean({ error: 'true or false' }),
  attempt: count('a number of attempts'),
  hints: count('a number of hints'),
  shown: count('a number of steps'),
  took: milliseconds('milliseconds'),
  mode: z.enum(MODES, { error: `one of ${MODES.join(', ')}` }),
});

const choices = keys('choices: route, assessment, help, last', {
  route: z.exactOptional(name('the id of a route')),
  assessment: z.exactOptional(pattern('a day such as 2027-03-31', /^\d{4}-\d{2}-\d{2}$/)),
  help: z.exactOptional(z.literal('off', { error: 'off' })),
  last: z.exactOptional(
    keys('the last page: path, title, at', { path: name('a path'), title: name('a title'), at: time }),
  ),
});

/** Deeper than any answer goes. */
const MOST_DEEP = 6;
const isShallow = (data: unknown, deep = 0): boolean =>
  typeof data !== 'object' ||
  data === null ||
  (deep < MOST_DEEP && Object.values(data).every((inner) => isShallow(inner, deep + 1)));
const answerSays = 'an answer';
const draft = keys('an answer begun: place, item, answer, at', {
  place: name('a place'),
  item: name('the address of a question'),
  answer: z.unknown().check(
    z.refine((data) => data !== undefined && isShallow(data), { error: answerSays }),
    z.meta({ description: answerSays }),
  ),
  at: time,
});

const visit = keys('a visit: id, callout, acts, wheels, said, at, took, done', {
  id: name('the id of a visit'),
  callout: name('the address of a callout'),
  acts: actsSchema,
  wheels: list('a list of training wheels', name('a training wheel')).check(
    z.maxLength(10, { error: 'at most 10 training wheels' }),
  ),
  said: z.exactOptional(name('the id of a fault')),
  at: time,
  took: milliseconds('milliseconds'),
  done: z.boolean({ error: 'true or false' }),
});

const manyWork = `at most ${MOST_WORK} pieces of work`;
const sitting = keys('a coursework begun: id, coursework, learner, begun, at, work', {
  id: name('the id of a coursework and the code of a learner'),
  coursework: courseworkSchema,
  learner: learnerSchema,
  begun: time,
  at: time,
  work: list('a list of pieces of work', workSchema).check(z.maxLength(MOST_WORK, { error: manyWork })),
});

const PLACE = /^switched-live\/(wiring\/1\/.{1,200}|bench\/1\/.{1,200}|bench-open)$/;

const versionSays = '1, the version of the format';
export const backupSchema = keys('a backup: backup, made, checksum, progress', {
  backup: z.literal(1, { error: versionSays }).check(z.meta({ description: versionSays })),
  made: time,
  checksum: pattern('a checksum: 8 digits or letters from a to f', /^[0-9a-f]{8}$/),
  progress: keys('progress: trials, choices, drafts, visits, sittings, places', {
    trials: list('a list of answers', trial).check(
      z.maxLength(MOST_TRIALS, { error: `at most ${MOST_TRIALS} answers` }),
    ),
    choices,
    drafts: list('a list of answers begun', draft).check(
      z.maxLength(MOST_DRAFTS, { error: `at most ${MOST_DRAFTS} answers begun` }),
    ),
    // Backups from before there were callouts have none.
    visits: z.exactOptional(
      list('a list of visits', visit).check(
        z.maxLength(MOST_VISITS, { error: `at most ${MOST_VISITS} visits` }),
      ),
    ),
    // Nor had backups any courseworks at first.
    sittings: z.exactOptional(
      list('a list of courseworks begun', sitting).check(
        z.maxLength(MOST_SITTINGS, { error: `at most ${MOST_SITTINGS} courseworks begun` }),
      ),
    ),
    places: map(
      'wirings and benches by the key they are kept under',
      pattern('the key of a wiring or bench', PLACE),
      z.string({ error: 'text' }),
    ),
  }),
}).check(
  z.meta({
    title: 'Backup',
    description:
      'What a device keeps of a learner. The checksum is FNV-1a over the UTF-16 units of the progress as compact JSON.',
  }),
);

/** What a backup holds: `places` are the wirings and benches, as text by the key they are kept under. */
export type Backup = Omit<z.output<typeof backupSchema>['progress'], 'visits' | 'sittings'> & {
  readonly visits?: readonly KeptVisit[];
  readonly sittings?: readonly Sitting[];
};

/** Whether what is kept under a key of this device's plain storage belongs into a backup. */
export const isPlace = (key: string): boolean => PLACE.test(key);

const checksumOf = (progress: unknown): string =>
  seedOf(JSON.stringify(progress)).toString(16).padStart(8, '0');

/**
 * The text of a backup file.
 * @param made milliseconds since 1970
 */
export function writeBackup(progress: Backup, made: number): string {
  // As it will be read: what JSON leaves out must not count.
  const kept: unknown = JSON.parse(JSON.stringify(progress));
  return `${JSON.stringify({ backup: 1, made, checksum: checksumOf(kept), progress: kept })}\n`;
}

/**
 * Progress out of a backup file's text.
 * @throws FileError with the place, what was expected there and what was found
 */
export function parseBackup(json: string, file: string): Backup {
  const fail = (place: readonly PropertyKey[], expected: string, found: string): never => {
    throw new FileError({ file, place: placeAt(place), expected, found });
  };
  if (json.length > MOST_BACKUP_BYTES) fail([], `at most ${MOST_BACKUP_BYTES / 1e6} MB`, 'more');
  const data = parseJson(json, file);
  const given = (data as { progress?: Record<string, unknown> } | null)?.progress;
  // Counted first: the schema would look at every one of a million before it minds their number.
  for (const [key, most] of [
    ['trials', MOST_TRIALS],
    ['drafts', MOST_DRAFTS],
    ['visits', MOST_VISITS],
    ['sittings', MOST_SITTINGS],
  ] as const) {
    const own = given?.[key];
    if (Array.isArray(own) && own.length > most) fail(['progress', key], `at most ${most}`, show(own));
  }
  const { checksum, progress } = checkShape(backupSchema, data, file);
  const places = Object.keys(progress.places).length;
  if (places > MOST_PLACES) fail(['progress', 'places'], `at most ${MOST_PLACES}`, String(places));
  const real = checksumOf(given);
  if (real !== checksum) fail(['checksum'], `${real}, as the progress in the file gives`, show(checksum));
  return progress as Backup;
}
