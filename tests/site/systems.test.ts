import { describe, expect, it } from 'vitest';
import { systemPages } from '../../src/files/site/systems.ts';
import { describeHeat } from '../../src/ui/plant/heat.ts';
import { landings } from '../../src/ui/reference/landings.ts';
import { scenes } from '../../src/ui/reference/scenes.ts';
import { drawStrip } from '../../src/ui/reference/strip-drawing.ts';
import {
  callsWithoutThermostat,
  interlockOf,
  sayDemand,
  sayValves,
  sayWhen,
  valveCount,
} from '../../src/ui/reference/system-words.ts';

const pages = systemPages();
const pageOf = (id: string) => {
  const page = pages.find(({ spec }) => spec.id === id);
  if (!page) throw new Error(`no system ${id}`);
  return page;
};

describe.each(pages.map((page) => [page.spec.title, page] as const))('%s', (_, page) => {
  const { about, spec, system, references } = page;

  it('says what it is, where it is met, and what the regulations ask, with their editions', () => {
    expect(about?.summary).toMatch(/\.$/);
    expect(about?.regulations.length).toBeGreaterThan(0);
    // A nickname is one more name, never the name.
    for (const name of about?.alsoCalled ?? []) expect(spec.title.toLowerCase()).not.toBe(name.toLowerCase());
    expect(spec.title).not.toMatch(/-plan\b/i);
  });

  it('says of every call when it is made and where its heat must go, with no name left out', () => {
    for (const demand of spec.demands) {
      const words = [...sayWhen(system, demand), ...sayDemand(system, demand)];
      expect(words.join(' ')).not.toMatch(/undefined/);
      expect(words.join(' ')).toContain(system.spec.parts[demand.heats]?.name.toLowerCase());
    }
  });

  it('lists every wire of its right wirings once', () => {
    for (const { wires } of references) {
      const listed = landings(system, wires).reduce((sum, { leads }) => sum + leads.length, 0);
      expect(listed).toBe(wires.length);
    }
  });

  it('draws every wire on the strip, where its leads have room', () => {
    const [first] = references;
    const drawing = first && drawStrip(system, first.wires);
    for (const { path } of drawing?.wires ?? []) expect(path).toMatch(/^M[\d.-]+ [\d.-]+L/);
  });
});

describe('what a page works out of a system', () => {
  // The valve's own logic is checked in tests/engine/parts: at rest open to the cylinder, mid to both, A to the radiators.
  it('a three-port is drawn at rest, for hot water, for heating and for both, as it stands then', () => {
    const { system, references } = pageOf('three-port');
    const drawn = scenes(system, references[0]?.wires ?? []);
    expect(drawn.map(({ title }) => title)).toEqual([
      'Nothing is called',
      'Hot water is called',
      'Heating is called',
      'Hot water and heating are called',
    ]);
    expect(drawn.map(({ fires }) => fires)).toEqual([false, true, true, true]);
    const stands = drawn.map(({ place }) => system.movers[0]?.positions[place]);
    expect(stands).toEqual(['B', 'B', 'A', 'mid']);
  });

  it('every picture of a call says that the heat gets to where it is called', () => {
    for (const { system, references } of pages) {
      for (const [k, scene] of scenes(system, references[0]?.wires ?? [])
        .slice(1)
        .entries()) {
        const demand = system.spec.demands[k];
        if (!demand || system.spec.demands.length > 3) continue;
        const words = describeHeat(system, scene.place, scene.fires, scene.pumps, scene.working);
        const part = system.parts.find(({ id }) => id === demand.heats);
        // “Heat goes to the cylinder.” or “The immersion heater heats.”
        const names = [part?.short, part?.name].map((name) => name?.toLowerCase());
        const told = words
          .toLowerCase()
          .split('. ')
          .some(
            (sentence) =>
              /heat goes to|heats/.test(sentence) && names.some((name) => name && sentence.includes(name)),
          );
        expect(told, `${system.spec.id}, ${demand.id}: ${words}`).toBe(true);
      }
    }
  });

  it('valves are counted by their kind', () => {
    expect(sayValves(pageOf('two-two-ports').system)).toBe('Two two-port valves');
    expect(sayValves(pageOf('unvented-three-port').system)).toBe(
      'One three-port valve and one two-port valve',
    );
  });

  it('a boiler whose overrun timer runs down is no valve', () => {
    const { system } = pageOf('overrun-three-port');
    expect(sayValves(system)).toBe('One three-port valve');
    expect(valveCount(system)).toBe(1);
  });

  it('electric heat alone has no boiler to interlock', () => {
    expect(interlockOf(pageOf('twin-immersion').system).has).toBe('none');
  });

  // Approved Document L, Volume 1, 2021 edition, 5.15: with no demand for heat the boiler and the pump are off.
  it('a call without a thermostat is no boiler interlock', () => {
    const { system } = pageOf('two-two-ports');
    expect(callsWithoutThermostat(system)).toEqual([]);
    const demands = system.spec.demands.map((demand) =>
      demand.id === 'water' ? { ...demand, when: { 'hot-water': 'on' } } : demand,
    );
    expect(callsWithoutThermostat({ ...system, spec: { ...system.spec, demands } })).toEqual(['hot water']);
    // The oldest layout of all: the programmer alone fires the boiler for hot water (common practice).
    expect(interlockOf(pageOf('gravity-hot-water').system).says).toBe(
      'No: hot water is called without a thermostat.',
    );
  });

  it('a right wiring is listed by the ways of the strip, in their order', () => {
    const { system, references } = pageOf('two-two-ports');
    const ways = landings(system, references[0]?.wires ?? []).map(({ way }) => Number(way));
    expect(ways).toEqual([...ways].sort((a, b) => a - b));
    expect(ways[0]).toBe(1);
  });
});
