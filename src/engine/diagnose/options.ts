import { type InputBits, partOf } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import { type Answers, answersOf } from './answers.ts';
import type { Bench } from './bench.ts';
import { costs } from './costs.ts';
import type { Test } from './evidence.ts';
import { energised, NOT_PROVED, type Setup } from './setup.ts';
import { calls, situations, suppliesOn, trips } from './situations.ts';
import { coversOn, isolationCost, testsNow } from './tests.ts';
import { follow, type Stand, type World } from './world.ts';
import type { Price } from './worth.ts';

/** What somebody may do: look and work the controls; also test dead, after safe isolation; also test live. */
export type Allowed = 'looks' | 'dead' | 'live';

export interface Options {
  /** `live` unless told. */
  readonly allow?: Allowed;
}

/** A test that could be done next, under some settings, and what each world would answer. */
export interface Option extends Answers {
  readonly phase: 'look' | 'dead' | 'live';
  /** Settings under which it is done. */
  readonly inputs: InputBits;
  /** Ids of the parts whose covers must be off. */
  readonly covers: readonly string[];
}

/** What of a visit decides about the cost of an option. */
export interface Stage {
  readonly inputs: InputBits;
  /** Cost of what is missing to a safe isolation; 0 when proved dead. */
  readonly isolation: number;
  /** Cost of a safe isolation once the supplies are on again: they need not be traced a second time. */
  readonly again: number;
  readonly open: ReadonlySet<string>;
}

export function stageOf(setup: Setup): Stage {
  const { system, inputs, open } = setup;
  const identified = new Set(system.supplies.map(({ part }) => system.parts[part]!.id));
  const on = { ...setup, inputs: inputs | suppliesOn(system), proof: { ...NOT_PROVED, identified } };
  return { inputs, isolation: isolationCost(setup), again: isolationCost(on), open };
}

/** What an option costs from a stage. */
export function priceOf({ inputs, isolation, open }: Stage, option: Option): Price {
  const operate = option.inputs === inputs ? 0 : costs.operate;
  if (option.phase === 'look') return { own: costs.look + operate, entry: 0 };
  const covers = costs.cover * option.covers.filter((part) => !open.has(part)).length;
  if (option.phase === 'dead') return { own: costs.deadTest + operate, entry: covers + isolation };
  // After the covers came off dead, the supply has to come on again.
  return {
    own: costs.liveTest + operate,
    entry: covers === 0 ? 0 : covers + isolation + costs.operate - operate,
  };
}

/** The stage after an option was taken. */
export function stageAfter(stage: Stage, option: Option): Stage {
  const { inputs, phase } = option;
  const open = new Set([...stage.open, ...option.covers]);
  const opened = open.size > stage.open.size;
  const on = stage.isolation === 0 || opened ? stage.again : stage.isolation;
  return { ...stage, inputs, isolation: phase === 'dead' ? 0 : on, open };
}

/** Follows a world to other settings. What was worked out before is kept: searches come to the same settings again and again. */
export type Mover = (setup: Setup, world: World) => World;

export function makeMover(bench: Bench): Mover {
  const known = new Map<string, World>();
  return (setup, world) => {
    const from = world.stands.map(({ standing }) => standing).join();
    const key = `${setup.inputs} ${from} ${world.candidate.id}`;
    const found = known.get(key) ?? follow(bench, setup, world);
    known.set(key, found);
    return found;
  };
}

/** Systems with more places than this are followed under fewer settings. */
const WIDE = 1 << 10;
/** With so few worlds left, the readings that tell them apart are looked for. */
export const FEW = 12;

const readings = (tests: readonly Test[]) => tests.filter((test) => test.kind === 'reads');

/**
 * Every option from a setup that tells some of these worlds apart. `thorough`: under many more settings, for a few worlds
 * that the usual ones do not tell apart.
 */
export function optionsFrom(
  setup: Setup,
  worlds: readonly World[],
  allow: Allowed,
  move: Mover,
  thorough = false,
): Option[] {
  const { system } = setup;
  const at = (inputs: InputBits): Setup => ({ ...setup, inputs });
  const moved = (inputs: InputBits, from: readonly World[]): readonly World[] =>
    from.map((world) => move(at(inputs), world));
  const off = setup.inputs & ~suppliesOn(system);
  const wide = system.places > WIDE;
  const tripped = setup.inputs & trips(system);
  const settings = unique([setup.inputs, ...situations(system, !wide).map((bits) => bits | tripped)]);
  const options: Option[] = [];
  const add = (phase: Option['phase'], inputs: InputBits, tests: readonly Test[], then: readonly World[]) => {
    for (const answers of answersOf(at(inputs), then, tests)) {
      options.push({ ...answers, phase, inputs, covers: coversOf(setup, answers.test) });
    }
  };
  const seen = testsNow(setup).filter(({ kind }) => kind !== 'reads');
  for (const inputs of settings) add('look', inputs, seen, moved(inputs, worlds));
  if (allow === 'looks') return options;

  // Covers come off dead: what was on goes off first.
  const dead = energised(setup) ? moved(off, worlds) : worlds;
  for (const inputs of deadSettings(setup, thorough)) {
    const then = moved(inputs, dead);
    add('dead', inputs, [...readings(testsNow(at(inputs))), ...ownReadings(then)], then);
  }
  if (allow === 'dead') return options;

  const live = thorough ? settings : unique([setup.inputs, ...calls(system).map((bits) => bits | tripped)]);
  for (const inputs of live) {
    if (!energised(at(inputs))) continue;
    const byCover = Map.groupBy(readings(testsNow(at(inputs))), (test) => coversOn(setup, test).length > 0);
    add('live', inputs, byCover.get(true) ?? [], moved(inputs, dead));
    add('live', inputs, byCover.get(false) ?? [], moved(inputs, worlds));
  }
  return options;
}

const unique = (all: readonly InputBits[]): InputBits[] => [...new Set(all)];

/**
 * Settings to test dead under, which close other contacts: as it is, all at rest, all calling; when thorough also each
 * alone and each left out.
 */
function deadSettings({ system, inputs }: Setup, thorough: boolean): InputBits[] {
  const fixed = suppliesOn(system) | trips(system);
  const rest = inputs & trips(system);
  const all = rest | ((2 ** system.inputs.length - 1) & ~fixed);
  const each = system.inputs.flatMap((_, k) => (((1 << k) & fixed) === 0 ? [1 << k] : []));
  const more = thorough ? [...each.map((one) => rest | one), ...each.map((one) => all & ~one)] : [];
  return unique([inputs & ~suppliesOn(system), rest, all, ...more]);
}

/** Ids of the parts that a reading touches. */
function coversOf({ system }: Setup, test: Test): string[] {
  if (test.kind !== 'reads') return [];
  return [...new Set(test.between.map((end) => partOf(system, system.nodeOf.get(end)!).id))];
}

/** Continuity that only these worlds suggest: along a wire landed wrong, a link too many; with few, whatever joins differ. */
function ownReadings(worlds: readonly World[]): Test[] {
  const pairs = new Map<string, Wire>();
  for (const { candidate } of worlds) {
    for (const { landed } of candidate.misplaced) pairs.set(wireKey(landed), landed);
    for (const link of candidate.strays) pairs.set(wireKey(link), link);
  }
  if (worlds.length <= FEW) {
    worlds.forEach(({ stands: [a] }, k) => {
      for (const {
        stands: [b],
      } of worlds.slice(k + 1)) {
        const found = a && b && (joinedOnlyIn(a, b) ?? joinedOnlyIn(b, a));
        if (found) pairs.set(wireKey(found), found);
      }
    });
  }
  return [...pairs.values()].map((between): Test => ({ kind: 'reads', instrument: 'continuity', between }));
}

/** Two terminals that are joined in the first stand and not in the second. */
function joinedOnlyIn(a: Stand, b: Stand): Wire | undefined {
  const { nodes, terminals } = a.system;
  const first = new Map<number, number>();
  for (let node = 0; node < terminals; node++) {
    const known = first.get(a.nets[node]!);
    if (known === undefined) first.set(a.nets[node]!, node);
    else if (b.nets[known] !== b.nets[node]) return [nodes[known]!, nodes[node]!];
  }
  return undefined;
}
