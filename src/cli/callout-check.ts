import type { Layout } from '../course/layout.ts';
import { alikeGroups } from '../engine/diagnose/alike.ts';
import { type Bench, makeBench } from '../engine/diagnose/bench.ts';
import type { Callout } from '../engine/diagnose/callout.ts';
import { type Candidate, candidateOf } from '../engine/diagnose/candidate.ts';
import { difficultyOf } from '../engine/diagnose/difficulty.ts';
import { expertRoute } from '../engine/diagnose/expert.ts';
import { explains } from '../engine/diagnose/symptom.ts';
import type { Settings, System } from '../engine/model/system.ts';
import { type CalloutFile, parseCallout } from '../files/callout.ts';
import { candidatesFor, makeCalloutFrom } from '../files/callout-pack.ts';
import type { DoubleFault } from '../files/double-faults.ts';
import { FileError, quote, show } from '../files/error.ts';
import { placeAt } from '../files/place.ts';
import type { TextFile } from '../files/site/folder.ts';
import { oneOf } from '../files/suggest.ts';

/** What the check of callouts looks at. */
export interface Visits {
  /** The files of callouts: path and text. */
  readonly files: readonly TextFile[];
  readonly doubles: readonly DoubleFault[];
  /** Path of the file that holds the double faults. */
  readonly doublesFile: string;
  readonly layoutIds: readonly string[];
  readonly layout: (id: string) => Layout;
}

type Fail = (path: readonly PropertyKey[], expected: string, found: string) => void;

/**
 * Everything that callouts claim and does not hold: names that the system does not have, a complaint that the fault does
 * not bring about or that a sound system would show as well, a fault that no allowed test settles, another level than
 * the engine finds; and a system without double faults, or a double fault that is a single one.
 */
export function checkCallouts(visits: Visits): FileError[] {
  const troubles: FileError[] = [];
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
  const known = new Map<string, string>();
  for (const { name: file, text } of visits.files) {
    const id = file.slice(file.lastIndexOf('/') + 1).replace(/\.yaml$/, '');
    inFile(file, (fail) => {
      const callout = parseCallout(text, file, id);
      const { title, system } = callout;
      const other = known.get(title);
      if (other) fail(['title'], 'a title that no other callout has', `that of ${other}`);
      known.set(title, file);
      if (visits.layoutIds.includes(system)) checkOne(callout, file, visits.layout(system), visits, fail);
      else fail(['system'], oneOf(system, visits.layoutIds), show(system));
    });
  }
  inFile(visits.doublesFile, (fail) => checkDoubles(visits, fail));
  return troubles;
}

function checkOne(file: CalloutFile, name: string, layout: Layout, visits: Visits, fail: Fail): void {
  const { system } = layout;
  const isNamed = checkSettings(system, file.found, ['found'], fail) && checkComplaints(system, file, fail);
  if (!isNamed) return;
  const callout = makeCalloutFrom(layout, file, name);
  const { fault, wires } = callout;
  const candidates = candidatesFor(layout, file.wiring, visits.doubles, visits.doublesFile);
  if (!candidates.some(({ id }) => id === fault.id)) {
    fail(
      ['fault'],
      `a single fault, or a double one that stands in ${visits.doublesFile}`,
      quote(fault.says),
    );
    return;
  }
  const bench = makeBench(system);
  const sound = candidateOf(system, []);
  const holds = (candidate: Candidate) =>
    callout.complaints.map((complaint) => explains(bench, wires, candidate, complaint));
  holds(fault).forEach((isSo, k) => {
    const { part, is } = file.complaints[k] as CalloutFile['complaints'][number];
    if (!isSo) fail(['complaints', k], `that ${part} is ${is} with the fault`, 'that it is not');
  });
  if (holds(fault).includes(false)) return;
  if (holds(sound).every(Boolean))
    fail(['complaints'], 'one that a sound system does not show', 'only what a sound one shows too');
  else checkLevel(bench, callout, candidates, file.level, fail);
}

/** Whether somebody with every test at hand gets to the bottom of it, and how hard it is for them. */
function checkLevel(
  bench: Bench,
  callout: Callout,
  candidates: readonly Candidate[],
  level: number,
  fail: Fail,
): void {
  const { fault, wires } = callout;
  const { left } = expertRoute(bench, callout, candidates);
  const other = alikeGroups(bench, wires, left).find((group) => group.every(({ id }) => id !== fault.id));
  if (other?.[0])
    fail(['fault'], 'one that allowed tests settle', `that they leave “${other[0].says}” as well`);
  const found = difficultyOf(bench, callout, candidates);
  if (found.level !== level)
    fail(
      ['level'],
      `${found.level}, for ${found.sharing} faults share the complaints and a good engineer needs about ${found.tests.toFixed(1)} tests`,
      String(level),
    );
}

function checkComplaints({ parts, inputs }: System, { complaints }: CalloutFile, fail: Fail): boolean {
  return complaints
    .map(({ set, part, is }, k) => {
      const at = ['complaints', k];
      const working = is === 'works' || is === 'idle';
      const ids = parts
        .filter(({ kind }) => (working ? kind.work : kind.heat === 'takes'))
        .map(({ id }) => id);
      if (!ids.includes(part)) fail([...at, 'part'], oneOf(part, ids), show(part));
      return checkSettings({ inputs }, set, [...at, 'set'], fail) && ids.includes(part);
    })
    .every(Boolean);
}

function checkSettings(
  { inputs }: Pick<System, 'inputs'>,
  settings: Settings,
  path: readonly PropertyKey[],
  fail: Fail,
): boolean {
  return Object.entries(settings)
    .map(([id, setting]) => {
      const input = inputs.find((one) => one.id === id);
      const names = input?.settings ?? inputs.map((one) => one.id);
      const wanted = input ? setting : id;
      if (names.includes(wanted)) return true;
      fail([...path, ...(input ? [id] : [])], oneOf(wanted, names), show(wanted));
      return false;
    })
    .every(Boolean);
}

/** Every system has a double fault at least, and each is one that no single fault is. */
function checkDoubles({ doubles, doublesFile, layoutIds, layout }: Visits, fail: Fail): void {
  const seen = new Set<string>();
  doubles.forEach((double, k) => {
    if (!layoutIds.includes(double.system)) {
      fail([k, 'system'], oneOf(double.system, layoutIds), show(double.system));
      return;
    }
    const own = layout(double.system);
    const singles = candidatesFor(own, double.wiring, [], doublesFile);
    const all = candidatesFor(own, double.wiring, [double], doublesFile);
    const fault = all[singles.length];
    const key = `${double.system} ${double.wiring ?? ''} ${fault?.id}`;
    if (!fault || seen.has(key))
      fail([k, 'faults'], 'a double fault of its own', 'one that is there already');
    seen.add(key);
  });
  for (const id of layoutIds)
    if (!doubles.some(({ system }) => system === id)) fail([], `a double fault of ${id}`, 'none');
}
