/**
 * `npm run --silent mark -- [COURSEWORK.yaml] RESULTS… [--csv FILE] [--goes FILE]`: marks a class. Results are files,
 * folders and zips. The table goes to standard output, what is worth saying of files to standard error. Ends with 0 when
 * all was read, 1 when something was left out, 2 for bad input.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Coursework } from '../course/coursework/coursework.ts';
import { slotsOf } from '../course/coursework/slots.ts';
import type { Book } from '../course/marks/book.ts';
import { goCells, learnerCells } from '../course/marks/cells.ts';
import { type Chosen, chooseCoursework } from '../course/marks/class.ts';
import { flagTitles } from '../course/marks/flag.ts';
import { labelSlots } from '../course/marks/labels.ts';
import { markClass } from '../course/marks/mark-class.ts';
import { saySlip } from '../course/marks/slip-words.ts';
import { rulesBroken, slipsMade } from '../course/marks/summary.ts';
import { parseCoursework } from '../files/coursework.ts';
import { FileError, printable } from '../files/error.ts';
import { marksCsv, sayStamp } from '../files/marks-csv.ts';
import { loadGrading } from '../files/site/grading.ts';
import { readResults } from './handed-in.ts';
import { aligned } from './layout.ts';
import { callersPath, readFailure, readText } from './load.ts';
import { complain, print } from './output.ts';

const USAGE =
  'usage: npm run --silent mark -- [COURSEWORK.yaml] RESULTS… [--csv FILE] [--goes FILE] (results: files, folders, zips)';
const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** At most so many lines of what the class has in common. */
const MOST_SAID = 5;

interface Asked {
  readonly tutors: string | undefined;
  readonly results: readonly string[];
  readonly csv: string | undefined;
  readonly goes: string | undefined;
}

/** What the command line asks for; undefined when it cannot be read. */
function readArguments(given: readonly string[]): Asked | undefined {
  const files: string[] = [];
  const out: { csv?: string; goes?: string } = {};
  for (let k = 0; k < given.length; k++) {
    const word = given[k] ?? '';
    if (word === '--csv' || word === '--goes') {
      const file = given[++k];
      if (file === undefined || file.startsWith('--')) return undefined;
      out[word === '--csv' ? 'csv' : 'goes'] = file;
    } else if (word.startsWith('--')) return undefined;
    else files.push(word);
  }
  const tutors = files.filter((file) => /\.ya?ml$/i.test(file));
  const results = files.filter((file) => !tutors.includes(file));
  if (tutors.length > 1 || results.length === 0) return undefined;
  return { tutors: tutors[0], results, csv: out.csv, goes: out.goes };
}

/** How the class stands, as a table. */
function tableOf({ entries }: Book): string {
  const tasks = entries[0]?.outcome.tasks ?? [];
  return aligned({
    headings: ['code', 'name', ...tasks.map(({ task }) => task.id), 'right', 'passed', 'worth a look'],
    rows: entries.map(({ code, names, outcome, flags }) => [
      code,
      printable(names.join(' / ')).slice(0, 30),
      ...outcome.tasks.map(({ right, of, passed }) => `${right}/${of}${passed ? '' : ' -'}`),
      `${outcome.right}/${outcome.of}`,
      outcome.passed ? 'yes' : 'no',
      [...new Set(flags.filter(({ weight }) => weight !== 'weak').map(({ kind }) => flagTitles[kind]))].join(
        '; ',
      ),
    ]),
  });
}

const sayChosen = ({ coursework, by, same, differing }: Chosen): string =>
  by === 'tutor'
    ? `Marked by “${printable(coursework.title)}” as given; ${differing} of ${same + differing} results carry another version of it.`
    : `No coursework was given: marked by the one that most results carry, “${printable(coursework.title)}” (${same} of ${same + differing}).`;

function mark({ tutors, results, csv, goes }: Asked): { readonly out: string; readonly code: number } {
  const given: Coursework | undefined =
    tutors === undefined ? undefined : parseCoursework(readText(callersPath(tutors, 'mark'), tutors), tutors);
  const { reads, troubles } = readResults(results.map((file) => callersPath(file, 'mark')));
  for (const { message } of troubles) complain(message);
  const chosen = chooseCoursework(
    reads.map(({ result }) => result),
    given,
  );
  if (!chosen || reads.length === 0)
    throw new FileError({
      file: results.join(', '),
      place: '',
      expected: 'at least one result file that can be read',
      found: 'none',
    });
  const { source, objectivesOf } = loadGrading(ROOT);
  const slots = slotsOf(chosen.coursework, objectivesOf);
  const { book, slips } = markClass(chosen, slots, source, reads, Date.now());
  for (const file of book.others)
    complain(
      `${printable(file)}: expected a result of ${chosen.coursework.id}, found one of another coursework`,
    );
  const labels = labelSlots(slots, {
    objectives: objectivesOf,
    job: (id) => id,
    callout: (id) => id,
    layout: (id) => source.layout(id).title,
  });
  save(csv, marksCsv(learnerCells(book, labels)));
  save(goes, marksCsv(goCells(book, sayStamp)));

  const passed = book.entries.filter(({ outcome }) => outcome.passed).length;
  const said = [
    tableOf(book).trimEnd(),
    '',
    sayChosen(chosen),
    `${book.entries.length} learners, ${passed} passed.`,
    ...rulesBroken(book)
      .slice(0, MOST_SAID)
      .map(({ rule, fails, codes }) => `${codes.length} broke ${rule}: ${fails}.`),
    ...slipsMade(book, slips)
      .slice(0, MOST_SAID)
      .map(
        ({ job, slip, codes }) =>
          `${codes.length} at ${job}: ${saySlip(source.layout(source.job(job).system).system, slip)}`,
      ),
    ...book.entries.flatMap(({ code, flags }) =>
      flags
        .filter(({ weight }) => weight !== 'weak')
        .map(
          ({ kind, slot, says }) =>
            `${code}${slot ? `, ${slot}` : ''}: ${flagTitles[kind]}. ${printable(says)}`,
        ),
    ),
  ];
  return { out: `${said.join('\n')}\n`, code: troubles.length + book.others.length > 0 ? 1 : 0 };
}

function save(file: string | undefined, text: string): void {
  if (file === undefined) return;
  try {
    writeFileSync(callersPath(file, 'mark'), text);
  } catch (error) {
    throw readFailure(error, file, 'a place where a file can be written');
  }
}

const asked = readArguments(process.argv.slice(2));
if (!asked) {
  complain(USAGE);
  process.exitCode = 2;
} else {
  try {
    const { out, code } = mark(asked);
    await print(out);
    process.exitCode = code;
  } catch (error) {
    if (!(error instanceof FileError || error instanceof RangeError)) throw error;
    complain(error.message);
    process.exitCode = 2;
  }
}
