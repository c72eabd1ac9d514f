import type { Coursework } from '../../course/coursework/coursework.ts';
import { slotsOf } from '../../course/coursework/slots.ts';
import type { GradeSource } from '../../course/coursework/source.ts';
import type { Result } from '../../course/coursework/work.ts';
import type { ResultHead } from '../../course/marks/class.ts';
import { canonical } from '../../course/marks/fingerprint.ts';
import { makeResultGrader, type ResultGrader } from '../../course/marks/grade-result.ts';
import { headOf } from '../../course/marks/mark-class.ts';
import { lessonsOf } from '../../course/outline.ts';
import { FileError } from '../../files/error.ts';
import { openHandedIn, readHandedIn } from '../../files/handed-in.ts';
import type { Unpacked } from '../../files/zip.ts';
import { zipLimits } from '../../files/zip.ts';
import { fetchGradeSource } from '../course/grading.ts';
import { fetchOutline } from '../course/shelf.ts';
import type { Answers, Ask, Given, Opened, Question, Reply } from './talk.ts';

const results = new Map<string, Result>();
let grading: { readonly print: string; readonly grader: ResultGrader } | undefined;

function readAll(files: readonly Unpacked[]): Pick<Opened, 'heads' | 'troubles'> {
  const heads: ResultHead[] = [];
  const troubles: string[] = [];
  for (const one of files)
    try {
      const result = readHandedIn(one);
      results.set(one.name, result);
      heads.push(headOf({ file: one.name, result }));
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      troubles.push(error.message);
    }
  return { heads, troubles };
}

async function openOne({ name, blob }: Given): Promise<Opened> {
  const tooBig = `${name}: expected at most ${zipLimits.packed / 1e6} MB, found ${Math.round(blob.size / 1e6)} MB`;
  if (blob.size > zipLimits.packed) return { heads: [], unpacked: [], troubles: [tooBig] };
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await blob.arrayBuffer());
  } catch {
    const found = 'one that cannot be read: a folder, or one that was moved away';
    return { heads: [], unpacked: [], troubles: [`${name}: expected a file, found ${found}`] };
  }
  const { files, troubles } = openHandedIn(name, bytes);
  const said = troubles.map(({ message }) => message);
  const [only] = files;
  if (files.length === 1 && only?.name === name) return { unpacked: [], ...readAll([only]) };
  return { heads: [], unpacked: files, troubles: said };
}

async function open(files: readonly Given[]): Promise<Opened> {
  const opened: Opened[] = [];
  for (const one of files) opened.push(await openOne(one));
  return {
    heads: opened.flatMap(({ heads }) => heads),
    unpacked: opened.flatMap(({ unpacked }) => unpacked),
    troubles: opened.flatMap(({ troubles }) => troubles),
  };
}

async function graderOf(coursework: Coursework): Promise<ResultGrader> {
  const print = canonical(coursework);
  if (grading?.print === print) return grading.grader;
  const [source, outline]: [GradeSource, Awaited<ReturnType<typeof fetchOutline>>] = await Promise.all([
    fetchGradeSource([coursework]),
    fetchOutline(),
  ]);
  const lessons = new Map(lessonsOf(outline).map(({ slug, objectives }) => [slug, objectives]));
  const slots = slotsOf(coursework, (lesson) => lessons.get(lesson) ?? []);
  const grader = makeResultGrader(coursework, slots, source);
  grading = { print, grader };
  return grader;
}

const work = ({ file, index }: { file: string; index: number }) => results.get(file)?.work[index];

async function answer(question: Question): Promise<Answers[Ask]> {
  switch (question.ask) {
    case 'open':
      return open(question.files);
    case 'read':
      return { unpacked: [], ...readAll(question.files) };
    case 'grade': {
      const grader = await graderOf(question.coursework);
      return question.files.flatMap((file) => {
        const result = results.get(file);
        return result ? [{ file, pieces: grader.grade({ file, result }) }] : [];
      });
    }
    case 'whose':
      return question.pieces.map((piece) => {
        const one = work(piece);
        return one && grading?.grader.whose(one, question.codes);
      });
    case 'slips':
      return question.circuits.map(({ circuit, ...where }) => {
        const one = work(where);
        return [circuit, (one && grading?.grader.slips(one)) ?? []] as const;
      });
    case 'result':
      return results.get(question.file);
  }
}

self.onmessage = async ({ data }: MessageEvent<{ number: number; question: Question }>) => {
  const { number, question } = data;
  try {
    const said = await answer(question);
    const bytes = question.ask === 'open' ? (said as Opened).unpacked.map((one) => one.bytes.buffer) : [];
    self.postMessage({ number, answer: said } satisfies Reply, { transfer: bytes });
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    self.postMessage({ number, failed } satisfies Reply);
  }
};
