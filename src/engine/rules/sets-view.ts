import type { Atoms } from '../circuit/atoms.ts';
import { allOf, anyOf } from '../circuit/sets.ts';
import {
  alternatives,
  type Demand,
  type Load,
  partNamed,
  runsOf,
  type System,
  type When,
} from '../model/system.ts';
import { openTo, sweepWays } from '../plant/ways.ts';

/** What rules need of a demand, whatever the wiring. */
interface DemandGround<T> {
  readonly demand: Demand;
  /** Its settings hold; it is called; it is called and not excused by its slack. */
  readonly wanted: T;
  readonly called: T;
  readonly mustMeet: T;
  /** A way is open from a heat source; its own valve is shut. */
  readonly open: T;
  readonly shut: T;
  /** Per part that brings heat: a way is open from it. */
  readonly ways: ReadonlyMap<string, T>;
  /** Numbers of the parts that must work, and that may, when it is called. */
  readonly runs: readonly number[];
  readonly allowed: readonly number[];
}

/** What can be said of all states at once before any wire is laid. */
export interface Ground<T> extends Atoms<T> {
  readonly system: System;
  readonly powered: T;
  readonly demands: readonly DemandGround<T>[];
  /** Per part that brings heat, by id: some way is open from it. */
  readonly anyWay: ReadonlyMap<string, T>;
}

/** What a wiring does in all states at once, with everything a rule may ask of it. */
export interface LiveSets<T> {
  /** States in which a node is joined to line, neutral, earth. */
  readonly line: (node: number) => T;
  readonly neutral: (node: number) => T;
  readonly earth: (node: number) => T;
  /** The same for the line and the neutral of one supply. */
  readonly lineOf: (supply: number, node: number) => T;
  readonly neutralOf: (supply: number, node: number) => T;
  /** Per part: states in which it does its work; none for a part that has none. */
  readonly working: readonly T[];
  /** Per demand: a heat source works and a way from it is open. */
  readonly heated: readonly T[];
  /** States from which no resting one can follow. */
  readonly hunting: T;
}

/** Works out what does not depend on the wiring. */
export function makeGround<T>(system: System, atoms: Atoms<T>): Ground<T> {
  const { sets, isSet } = atoms;
  const { spec, inputs, parts, supplies } = system;
  const ways = sweepWays(system, atoms);
  const hold = (when: When): T =>
    anyOf(
      sets,
      alternatives(when).map((settings) =>
        allOf(
          sets,
          Object.entries(settings).map(([name, setting]) => {
            const input = inputs.findIndex(({ id }) => id === name);
            return isSet(input, inputs[input]!.settings[1] === setting ? 1 : 0);
          }),
        ),
      ),
    );
  const on = (input: number): T => (input < 0 ? sets.all : isSet(input, 1));
  const called = ({ when, supply, yields }: Demand): T => {
    const feeds = supplies.find(({ part }) => parts[part]!.id === supply) ?? system.supply;
    const first = spec.demands.find(({ id }) => id === yields);
    const due = sets.and(hold(when), on(feeds.input));
    return first ? sets.and(due, sets.not(called(first))) : due;
  };
  const numbers = (ids: readonly string[]) => ids.map((id) => parts.findIndex((part) => part.id === id));
  const demands = spec.demands.map((demand): DemandGround<T> => {
    const runs = numbers(runsOf(system, demand));
    const due = called(demand);
    return {
      demand,
      wanted: hold(demand.when),
      called: due,
      mustMeet: demand.slack ? sets.and(due, sets.not(hold(demand.slack))) : due,
      open: openTo(atoms, ways, demand.heats),
      shut: demand.valve === undefined ? sets.all : atoms.stands(partNamed(system, demand.valve).mover, 0),
      ways: new Map([...ways].map(([id, way]) => [id, way.get(demand.heats) ?? sets.none])),
      runs,
      allowed: [...runs, ...numbers(demand.may ?? [])],
    };
  });
  const anyWay = new Map([...ways].map(([id, way]) => [id, anyOf(sets, [...way.values()])]));
  return { ...atoms, system, powered: on(system.supply.input), demands, anyWay };
}

/** Says, of a wiring, in which states each part does its work and heat gets to each demand. */
export function makeWork<T>({ sets, system, demands }: Ground<T>) {
  const needs = system.parts.map(({ kind }, part) => {
    const loads = system.loads.filter((load) => load.part === part);
    return kind.work?.needs.map((need) => {
      const names = typeof need === 'string' ? [need] : need;
      return loads.filter(({ spec }) => names.includes(spec.id));
    });
  });
  // A heat source without work of its own is always hot.
  const ways = demands.map((demand) =>
    [...demand.ways].map(([id, open]) => {
      const part = system.parts.findIndex((one) => one.id === id);
      return { open, part: system.parts[part]!.kind.work ? part : -1 };
    }),
  );
  return {
    working: (works: (load: Load) => T): T[] =>
      needs.map((groups) =>
        groups
          ? allOf(
              sets,
              groups.map((loads) => anyOf(sets, loads.map(works))),
            )
          : sets.none,
      ),
    heated: (working: readonly T[]): T[] =>
      ways.map((routes) =>
        anyOf(
          sets,
          routes.map(({ open, part }) => (part < 0 ? open : sets.and(open, working[part]!))),
        ),
      ),
  };
}
