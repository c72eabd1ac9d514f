import type { Act } from '../../engine/diagnose/act.ts';
import type { System } from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';
import { sayAct, saySet, sentence, the } from './say.ts';

type Group = 'isolation' | 'covers' | 'controls' | 'single';

const GROUPS: Readonly<Partial<Record<Act['do'], Group>>> = {
  identify: 'isolation',
  isolate: 'isolation',
  lock: 'isolation',
  prove: 'isolation',
  'dead-test': 'isolation',
  open: 'covers',
  operate: 'controls',
};
const groupOf = (act: Act): Group => GROUPS[act.do] ?? 'single';

/**
 * Acts as instructions, in their order: the steps of a safe isolation as one sentence, covers that come off together as
 * one, controls set together as one.
 */
export function sayRoute(system: System, acts: readonly Act[]): string[] {
  const runs: Act[][] = [];
  for (const act of acts) {
    const last = runs.at(-1);
    const before = last?.at(-1);
    if (last && before && groupOf(act) !== 'single' && groupOf(before) === groupOf(act)) last.push(act);
    else runs.push([act]);
  }
  return runs.map((run) => sentence(sayRun(system, run)));
}

function sayRun(system: System, acts: readonly Act[]): string {
  const [first] = acts;
  if (first === undefined) return '';
  const group = groupOf(first);
  if (group === 'isolation') return `Isolate safely: ${list(stepsOf(system, acts))}`;
  if (acts.length === 1) return sayAct(system, first);
  if (group === 'covers') {
    const parts = acts.flatMap((act) => (act.do === 'open' ? [the(system, act.part)] : []));
    return `Take the covers off ${list(parts)}`;
  }
  const settings = acts.map((act) => (act.do === 'operate' ? act.settings : {}));
  return `Set ${saySet(system, Object.assign({}, ...settings))}`;
}

/** The steps of an isolation, each in a few words and once. */
function stepsOf(system: System, acts: readonly Act[]): string[] {
  const supplies = acts.flatMap((act) => (act.do === 'identify' ? [the(system, act.supply)] : []));
  const words = new Set<string>();
  for (const act of acts) {
    if (act.do === 'identify') words.add(`find what feeds it (${list(supplies)})`);
    else if (act.do === 'isolate') words.add('switch off');
    else if (act.do === 'lock') words.add('lock off');
    else if (act.do === 'dead-test') words.add('test every pair for dead');
    else words.add(words.has('test every pair for dead') ? 'prove it again' : 'prove the tester');
  }
  return [...words];
}
