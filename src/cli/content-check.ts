import { type Judging, judgeFor } from '../engine/grade/judge-for.ts';
import type { Verdict } from '../engine/grade/verdict.ts';
import { type Wire, wireKey } from '../engine/model/wiring.ts';
import { checkCores } from '../engine/rules/cores.ts';
import { checkStores } from '../engine/rules/stores.ts';
import { FileError, show } from '../files/error.ts';
import { checkJob, type Fail } from '../files/job-fit.ts';
import { applyMistake } from '../files/mistake.ts';
import { placeAt } from '../files/place.ts';
import type { Library, LoadedSystem } from './library.ts';

/** What a content check looked at, and everything it found wrong. */
export interface ContentReport {
  readonly systems: number;
  readonly references: number;
  readonly mistakes: number;
  readonly jobs: number;
  readonly troubles: readonly FileError[];
}

const names = (ids: readonly string[]): string => (ids.length > 0 ? ids.join(', ') : 'nothing');

/** Ids of the rules that a verdict's findings break, in the order of the alphabet. */
const idsOf = ({ findings }: Verdict, isAdvice: boolean): string[] =>
  findings
    .filter(({ severity }) => (severity === 'advice') === isAdvice)
    .map(({ id }) => id)
    .sort();

/** Every file of the library: sound, under its own name, and true to what it claims. */
export function checkContent(library: Library): ContentReport {
  const troubles: FileError[] = [];
  const count = { systems: 0, references: 0, mistakes: 0, jobs: 0 };
  /** Runs a check of one file; its own failure is one more trouble. */
  const inFile = (file: string, check: (fail: Fail) => void) => {
    try {
      check((path, expected, found) =>
        troubles.push(new FileError({ file, place: placeAt(path), expected, found })),
      );
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      troubles.push(error);
    }
  };

  for (const id of library.systemIds) {
    const file = library.nameOf('systems', id);
    inFile(file, (fail) => {
      count.systems++;
      const loaded = library.system(id, { file, place: 'id' });
      if (loaded.spec.id !== id) fail(['id'], `${id}, as the file is called`, show(loaded.spec.id));
      if (!loaded.about) fail(['about'], 'what the reference pages say of it', 'nothing');
      count.references += loaded.references.length;
      count.mistakes += loaded.mistakes.length;
      for (const { part, terminal, says, source } of checkCores(loaded.system))
        fail(['parts', part], `${terminal} in a colour that tells the truth (${source})`, says);
      for (const { rule, source, says } of checkStores(loaded.spec))
        fail(['stores'], `${rule} to hold (${source})`, `that ${says}`);
      checkWirings(loaded, judgeFor(loaded.system), fail);
    });
  }
  for (const id of library.jobIds) {
    const file = library.nameOf('jobs', id);
    inFile(file, (fail) => {
      count.jobs++;
      const job = library.job(id, { file, place: 'id' });
      if (job.id !== id) fail(['id'], `${id}, as the file is called`, show(job.id));
      const loaded = library.system(job.system, { file, place: 'system' });
      const old = job.from && library.system(job.from.system, { file, place: 'from.system' });
      checkJob(job, loaded, old, file, fail);
    });
  }
  return { ...count, troubles };
}

/** Right wirings are accepted, wrong ones break exactly what they say, and no two are the same circuit. */
function checkWirings({ references, mistakes }: LoadedSystem, judge: Judging, fail: Fail): void {
  const circuits = new Map<string, string>();
  const isNew = (wires: readonly Wire[], id: string, path: readonly PropertyKey[]) => {
    const circuit = [...new Set(wires.map(wireKey))].sort().join('\n');
    const same = circuits.get(circuit);
    if (same !== undefined) fail(path, 'a circuit of its own', `the same wires as ${same}`);
    circuits.set(circuit, id);
  };

  const adviceOf = new Map<string, string[]>();
  references.forEach(({ id, wires }, k) => {
    const at = ['references', k];
    isNew(wires, id, at);
    const verdict = judge.judge(wires);
    adviceOf.set(id, idsOf(verdict, true));
    if (!verdict.accepted) fail(at, `${id} to be accepted`, `that it breaks ${names(idsOf(verdict, false))}`);
  });

  mistakes.forEach((mistake, k) => {
    const at = ['mistakes', k];
    const { id, from, breaks, advises } = mistake;
    const wires = applyMistake(references, mistake);
    isNew(wires, id, at);
    const verdict = judge.judge(wires);
    const same = (key: string, said: readonly string[], found: readonly string[]) => {
      const expected = names([...said].sort());
      if (expected !== names(found)) fail([...at, key], `that ${id} ${key} ${expected}`, names(found));
    };
    same('breaks', breaks, idsOf(verdict, false));
    const usual = adviceOf.get(from) ?? [];
    same(
      'advises',
      advises,
      idsOf(verdict, true).filter((rule) => !usual.includes(rule)),
    );
    if (breaks.length + advises.length === 0)
      fail([...at, 'breaks'], `${id} to break a rule or earn advice`, 'neither');
  });
}
