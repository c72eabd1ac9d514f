import { nearestChange, sizeOf } from '../engine/grade/change.ts';
import { type Judging, judgeFor } from '../engine/grade/judge-for.ts';
import type { Verdict } from '../engine/grade/verdict.ts';
import { type Wire, wireKey } from '../engine/model/wiring.ts';
import { checkCores } from '../engine/rules/cores.ts';
import { checkStores } from '../engine/rules/stores.ts';
import { checkWires } from '../files/attempt.ts';
import { startWiring } from '../files/conversion.ts';
import { FileError, show } from '../files/error.ts';
import type { Job } from '../files/job.ts';
import { applyMistake, type Reference } from '../files/mistake.ts';
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

type Fail = (path: readonly PropertyKey[], expected: string, found: string) => void;

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
      checkWires(loaded.system, job.gives?.wires ?? [], file, ['gives', 'wires']);
      checkGiven(job, loaded.references, fail);
      if (job.from) {
        const old = library.system(job.from.system, { file, place: 'from.system' });
        checkConversion(loaded, startWiring(job.from, old, loaded.system, file).wires, fail);
      }
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

/** Wires that are given as sound can be completed to a right wiring. */
function checkGiven({ gives }: Job, references: readonly Reference[], fail: Fail): void {
  if (!gives?.locked || gives.wires.length === 0) return;
  const strangers = references.map((reference) => {
    const there = new Set(reference.wires.map(wireKey));
    return { reference, wires: gives.wires.filter((wire) => !there.has(wireKey(wire))) };
  });
  const [nearest] = strangers.sort((a, b) => a.wires.length - b.wires.length);
  const [stranger] = nearest?.wires ?? [];
  if (nearest && !stranger) return;
  const found = nearest
    ? `${show(stranger?.join(' '))}, which even ${nearest.reference.id} lacks`
    : 'no reference';
  fail(['gives', 'wires'], 'only wires of one reference', found);
}

/** The old wiring is not right for the new system, and some right wiring can be made out of it. */
function checkConversion({ system, references }: LoadedSystem, start: readonly Wire[], fail: Fail): void {
  if (judgeFor(system).judge(start).accepted)
    fail(['from'], 'an old wiring that must be changed', 'one that is accepted as it is');
  const wanted = references.map(({ wires }) => wires);
  if (wanted.length === 0) fail(['system'], 'a system with a right wiring', 'no reference');
  else if (sizeOf(nearestChange(system, start, wanted).change) === 0)
    fail(['from'], 'an old wiring that must be changed', 'the circuit of a reference');
}
