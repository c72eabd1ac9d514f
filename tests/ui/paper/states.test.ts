import { describe, expect, test } from 'vitest';
import { evaluate, nextPlaces } from '../../../src/engine/circuit/plain.ts';
import { explorePlain } from '../../../src/engine/explore/plain.ts';
import { isWide } from '../../../src/engine/grade/size.ts';
import {
  alternatives,
  bitsOf,
  type Config,
  positionOf,
  type Settings,
  type System,
  settingsOf,
} from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { viewState } from '../../../src/engine/rules/view.ts';
import { systemPages } from '../../../src/files/site/systems.ts';
import { type StatesTable, statesTable } from '../../../src/ui/paper/states.ts';

const systems = systemPages().map((page) => {
  const wirings = page.references.map(({ wires }) => wires);
  return { id: page.spec.id, ...page, wirings, table: statesTable(page.system, wirings) };
});

/** Every state in which a wiring may stand after each line, found here step by step: the settings say nothing of how. */
function replay(system: System, wires: readonly Wire[], { rows }: StatesTable): Config[][] {
  let settings: Settings = settingsOf(system, 0);
  let places = [0];
  return rows.map(({ changes }) => {
    for (const { input, setting } of changes) {
      settings = { ...settings, [input]: setting };
      const inputs = bitsOf(system, settings);
      const passed = [...places];
      places = [];
      for (let k = 0; k < passed.length; k++) {
        const place = passed[k] ?? 0;
        const next = nextPlaces(system, evaluate(system, wires, { inputs, place }), place);
        if (next.length === 0) places.push(place);
        for (const to of next) if (!passed.includes(to)) passed.push(to);
      }
    }
    return places.map((place) => ({ inputs: bitsOf(system, settings), place }));
  });
}

/** What a person sees of a watched part in a state, in the words of the table. */
function seen(system: System, wires: readonly Wire[], config: Config, id: string): string {
  const part = system.parts.findIndex((one) => one.id === id);
  const { work } = system.parts[part]?.kind ?? {};
  const position = positionOf(system, system.parts[part] as System['parts'][number], config.place);
  if (!work) return system.spec.parts[id]?.positions?.[position] ?? position;
  const words = { fires: 'fires', pumps: 'runs', heats: 'heats' };
  return viewState(system, wires, config).working(part) ? words[work.does] : 'off';
}

test('There are twenty-four tables', () => {
  expect(systems.length).toBe(24);
});

describe.each(systems)('The table of states of $id', ({ system, wirings, table }) => {
  const ends = wirings.map((wires) => replay(system, wires, table));

  test('says in every cell what the plain evaluator finds there, for every right wiring', () => {
    for (const [line, { cells, says }] of table.rows.entries())
      for (const [k, { part }] of table.columns.entries()) {
        const found = new Set(
          wirings.flatMap((wires, w) =>
            (ends[w]?.[line] ?? []).map((config) => seen(system, wires, config, part)),
          ),
        );
        expect(new Set(cells[k]?.says.split(' or ')), `${line + 1}. ${says}: ${part}`).toEqual(found);
      }
  });

  test('asks of the parts what the calls ask, whoever wired them', () => {
    for (const [w, wires] of wirings.entries())
      for (const [line, configs] of (ends[w] ?? []).entries())
        for (const config of configs) {
          const view = viewState(system, wires, config);
          for (const demand of system.spec.demands)
            if (view.mustMeet(demand) && (demand.runs ?? ['all']).length > 0)
              expect(view.heated(demand), `${line + 1}: ${demand.says}`).toBe(true);
          if (!system.spec.demands.some((demand) => view.called(demand)))
            for (const [k, { kind }] of table.columns.entries())
              if (kind === 'work') expect(table.rows[line]?.cells[k]?.says, `${line + 1}`).toBe('off');
        }
  });

  test('tries each call alone and takes each of its conditions away', () => {
    let settings: Settings = settingsOf(system, 0);
    const tried = table.rows.map(({ changes }) => {
      settings = {
        ...settings,
        ...Object.fromEntries(changes.map(({ input, setting }) => [input, setting])),
      };
      return bitsOf(system, settings);
    });
    const supplies = Object.fromEntries(
      system.supplies.flatMap(({ input }) => {
        const found = system.inputs[input];
        return found ? [[found.id, found.settings[1]]] : [];
      }),
    );
    for (const { when } of system.spec.demands)
      for (const call of alternatives(when)) {
        const bits = bitsOf(system, { ...supplies, ...call });
        expect(tried, JSON.stringify(call)).toContain(bits);
        for (const id of Object.keys(call)) {
          const k = system.inputs.findIndex((input) => input.id === id);
          expect(tried, `${JSON.stringify(call)} without ${id}`).toContain(bits ^ (1 << k));
        }
      }
  });

  test('ends with each supply off and on again, and all calls off', () => {
    for (const { input } of system.supplies) {
      const id = system.inputs[input]?.id;
      const moves = table.rows.flatMap(({ changes }) => changes.filter((change) => change.input === id));
      expect(moves.map(({ setting }) => setting).slice(0, 3), id).toEqual(['on', 'off', 'on']);
    }
  });

  test('shows everything that its settings can show, however they are come to', () => {
    expect(table.hasAllWays).toBe(!isWide(system));
    if (!table.hasAllWays) return;
    const look = (wires: readonly Wire[], config: Config) =>
      JSON.stringify(table.columns.map(({ part }) => seen(system, wires, config, part)));
    for (const [w, wires] of wirings.entries()) {
      const shown = new Map<number, Set<string>>();
      for (const config of ends[w]?.flat() ?? [])
        shown.set(config.inputs, (shown.get(config.inputs) ?? new Set()).add(look(wires, config)));
      for (const key of explorePlain(system, wires).judged) {
        const config = { inputs: Math.floor(key / system.places), place: key % system.places };
        const known = shown.get(config.inputs);
        if (known) expect([...known]).toContain(look(wires, config));
      }
    }
  });

  test('has no more lines than two sheets hold', () => {
    expect(table.rows.length).toBeLessThanOrEqual(30);
  });
});

test('A three-port that stays with the radiators after they were called has a line for it', () => {
  const { table } = systems.find(({ id }) => id === 'three-port') as (typeof systems)[number];
  const line = table.rows.find(({ says, called }) => says === 'Heating off' && called === 'nothing');
  // The grey stays live through “hot water off”, so the motor is held at its end: common practice.
  expect(line?.cells.at(-1)?.says).toBe('open to the radiators only');
});
