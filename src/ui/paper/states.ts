import { isWide } from '../../engine/grade/size.ts';
import {
  alternatives,
  bitsOf,
  type Demand,
  holds,
  isCalled,
  type Part,
  type Settings,
  type System,
  settingsOf,
} from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { isValve } from '../reference/system-words.ts';
import { type Change, cold, type Standing, standsThere, walk, worksThere } from './walk.ts';

/** A part that the table watches: one that works (a boiler, a pump, an immersion) or a valve. */
export interface StatesColumn {
  readonly part: string;
  readonly name: string;
  readonly short: string;
  readonly kind: 'work' | 'valve';
}

/** One line of the table: what to set, what is then called, and what every watched part must do. */
export interface StatesRow {
  /** What to set, one after the other, from where the row before left off. */
  readonly changes: readonly Change[];
  readonly says: string;
  readonly called: string;
  /** A word or two per column; `or` between them where right wirings, or two valves in a race, may differ. */
  readonly cells: readonly { readonly says: string; readonly active: boolean }[];
}

/** The states of a system to try when it is commissioned, in an order in which a person can set them. */
export interface StatesTable {
  /** Settings that depend on where the valves come from were looked for and are in it. */
  readonly hasAllWays: boolean;
  readonly columns: readonly StatesColumn[];
  readonly rows: readonly StatesRow[];
}

const WORDS = { fires: ['fires', 'off'], pumps: ['runs', 'off'], heats: ['heats', 'off'] } as const;

/** What is watched: everything that works, then every valve. */
const watched = ({ parts }: System): readonly Part[] => [
  ...parts.filter(({ kind }) => kind.work),
  ...parts.filter(({ kind }) => isValve(kind)),
];

/**
 * The settings to go through, by rule: all off; the supplies on; each call alone, then each of its conditions taken away
 * by itself; all calls together; each call ended while the others go on; each limit or cut-out opened while all is
 * called; each supply off and on again; all calls off. `again` marks what is worth a line though it was seen before.
 */
function* plan(system: System): Generator<readonly [Settings, again?: boolean]> {
  const { demands } = system.spec;
  const rest = settingsOf(system, 0);
  const switches = system.supplies.flatMap(({ input }) => system.inputs[input] ?? []);
  const on = { ...rest, ...Object.fromEntries(switches.map(({ id, settings }) => [id, settings[1]])) };
  const other = (id: string, setting: string): string => {
    const [first, second] = system.inputs.find((input) => input.id === id)?.settings ?? ['', ''];
    return setting === first ? second : first;
  };
  const conditions = (settings: Settings) =>
    system.inputs.flatMap(({ id }) => {
      const setting = settings[id];
      return setting === undefined ? [] : [{ id, setting }];
    });

  yield [rest];
  yield [on];
  for (const { when } of demands)
    for (const call of alternatives(when)) {
      yield [{ ...on, ...call }];
      for (const { id, setting } of conditions(call)) yield [{ ...on, ...call, [id]: other(id, setting) }];
    }

  const firsts = demands.map(({ when }) => alternatives(when)[0] ?? {});
  const all: Settings = Object.assign({}, on, ...firsts);
  yield [all];
  for (const [k, call] of firsts.entries()) {
    const shared = (id: string) => firsts.some((one, at) => at !== k && id in one);
    const wanted = conditions(call);
    const end = wanted.find(({ id }) => !shared(id)) ?? wanted[0];
    if (end && demands.length > 1) yield [{ ...all, [end.id]: other(end.id, end.setting) }];
  }
  for (const { id, settings } of system.inputs)
    if (firsts.some((call) => call[id] === settings[0])) yield [{ ...all, [id]: settings[1] }];
  for (const { id, settings } of switches) {
    yield [{ ...all, [id]: settings[0] }, true];
    yield [all, true];
  }
  yield [on, true];
}

/** What to set to come from one set of settings to another: what goes off before what comes on, a supply outside both. */
function changesTo(system: System, from: Settings, to: Settings): Change[] {
  const isSupply = (id: string) => system.supplies.some(({ input }) => system.inputs[input]?.id === id);
  const turn = ({ id, settings }: System['inputs'][number]): number =>
    to[id] === settings[0] ? (isSupply(id) ? 4 : 2) : isSupply(id) ? 1 : 3;
  const changed = system.inputs.filter(({ id }) => from[id] !== to[id]);
  return changed
    .toSorted((a, b) => turn(a) - turn(b))
    .map(({ id }) => ({ input: id, setting: to[id] ?? '' }));
}

function sayChanges(system: System, changes: readonly Change[]): string {
  if (changes.length === 0) return 'Everything off, the supply too';
  const words = changes.map(({ input, setting }) => {
    const label = system.inputs.find(({ id }) => id === input)?.label ?? input;
    return `${label.toLowerCase()} ${setting}`;
  });
  return capital(words.join(', then '));
}

/** What is called; with many calls, what is not. */
function sayCalled(system: System, settings: Settings): string {
  const bits = bitsOf(system, settings);
  const { demands } = system.spec;
  const called = demands.filter((demand) => isCalled(system, bits, demand));
  const missing = demands.filter((demand) => !called.includes(demand));
  const excused = ({ slack }: Demand) =>
    slack !== undefined && alternatives(slack).some((one) => holds(system, bits, one));
  if (called.length === 0) return 'nothing';
  if (called.length > 2 && missing.length === 0) return 'everything';
  if (called.length > 2 && missing.length === 1) return `all but ${missing[0]?.says}`;
  return list(called.map((demand) => `${demand.says}${excused(demand) ? ' (may go unmet)' : ''}`));
}

/** One right wiring, and where it stands. */
type End = readonly [readonly Wire[], Standing];

function cellOf(system: System, part: Part, ends: readonly End[]): StatesRow['cells'][number] {
  const { work } = part.kind;
  if (work) {
    const works = new Set(ends.flatMap(([wires, at]) => [...worksThere(system, wires, at, part)]));
    const words = [true, false].filter((one) => works.has(one)).map((one) => WORDS[work.does][one ? 0 : 1]);
    return { says: words.join(' or '), active: works.has(true) };
  }
  const positions = part.kind.motion?.positions ?? [];
  const stands = new Set(ends.flatMap(([, at]) => [...standsThere(system, at, part)]));
  const says = positions
    .filter((position) => stands.has(position))
    .map((position) => system.spec.parts[part.id]?.positions?.[position] ?? position);
  return { says: says.join(' or '), active: !stands.has(positions[0] ?? '') || stands.size > 1 };
}

/** The table while it is written: where the controls and every wiring stand, and what was seen. */
class Writing {
  readonly rows: StatesRow[] = [];
  readonly #system: System;
  readonly #parts: readonly Part[];
  readonly #seen = new Set<string>();
  readonly #tried = new Set<number>();
  #now: Settings;
  #ends: readonly End[];

  constructor(system: System, parts: readonly Part[], wirings: readonly (readonly Wire[])[]) {
    this.#system = system;
    this.#parts = parts;
    this.#now = settingsOf(system, 0);
    this.#ends = wirings.map((wires): End => [wires, cold]);
  }

  #after(ends: readonly End[], changes: readonly Change[]): readonly End[] {
    return ends.map(([wires, at]): End => [wires, walk(this.#system, wires, at, changes)]);
  }

  #cells(ends: readonly End[]): StatesRow['cells'] {
    return this.#parts.map((part) => cellOf(this.#system, part, ends));
  }

  /** Sets the controls and writes a line, unless the same settings showed the same before. */
  set(settings: Settings, again: boolean): void {
    const changes = changesTo(this.#system, this.#now, settings);
    if (changes.length === 0 && this.rows.length > 0) return;
    const ends = this.#after(this.#ends, changes);
    const isSeen = this.#seen.has(keyOf(bitsOf(this.#system, settings), this.#cells(ends)));
    if (!isSeen || again) this.#write(settings, changes, ends);
  }

  #write(settings: Settings, changes: readonly Change[], ends: readonly End[]): void {
    const bits = bitsOf(this.#system, settings);
    const cells = this.#cells(ends);
    this.#seen.add(keyOf(bits, cells));
    this.#tried.add(bits);
    this.#now = settings;
    this.#ends = ends;
    const says = sayChanges(this.#system, changes);
    this.rows.push({ changes, says, called: sayCalled(this.#system, settings), cells });
  }

  /**
   * Writes a line for settings that were tried but show something else when they are come to another way round: the
   * nearest ones, by fewest controls moved. False when there are none left.
   */
  setOtherwise(): boolean {
    const { inputs } = this.#system;
    const ways = [{ settings: this.#now, changes: [] as Change[], ends: this.#ends }];
    const passed = new Set<string>();
    for (const { settings, changes, ends } of ways) {
      const bits = bitsOf(this.#system, settings);
      const key = JSON.stringify([bits, ends.map(([, { places }]) => places)]);
      if (passed.has(key)) continue;
      passed.add(key);
      if (this.#tried.has(bits) && !this.#seen.has(keyOf(bits, this.#cells(ends)))) {
        this.#write(settings, changes, ends);
        return true;
      }
      for (const { id, settings: both } of inputs) {
        const change = { input: id, setting: settings[id] === both[0] ? both[1] : both[0] };
        ways.push({
          settings: { ...settings, [id]: change.setting },
          changes: [...changes, change],
          ends: this.#after(ends, [change]),
        });
      }
    }
    return false;
  }
}

const keyOf = (bits: number, cells: StatesRow['cells']): string =>
  JSON.stringify([bits, cells.map(({ says }) => says)]);

/**
 * The table of states of a system, worked out by the plain evaluator for all its right wirings side by side.
 * A setting that comes up again with nothing new to see is left out; one that shows something else when it is come to
 * another way round is tried that way too, except where a system has too many states to try all ways.
 * @param wirings right wirings of the system, one at least
 */
export function statesTable(system: System, wirings: readonly (readonly Wire[])[]): StatesTable {
  const parts = watched(system);
  const writing = new Writing(system, parts, wirings);
  for (const [settings, again = false] of plan(system)) writing.set(settings, again);
  const hasAllWays = !isWide(system);
  if (hasAllWays) while (writing.setOtherwise());
  return {
    hasAllWays,
    columns: parts.map(({ id, name, short, kind }) => {
      return { part: id, name, short, kind: kind.work ? 'work' : 'valve' };
    }),
    rows: writing.rows,
  };
}
