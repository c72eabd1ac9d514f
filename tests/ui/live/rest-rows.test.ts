import { expect, test } from 'vitest';
import { loadShelf } from '../../../src/files/site/course.ts';
import { restTable } from '../../../src/ui/live/rest-rows.ts';

const shelf = loadShelf();

// Source: the published rows of the mid-position valve, energycontrols2.fsnet.co.uk ("3 port valves") and next.gr; grey
// alone from mid follows these analyses, while simple tables (octaveblue.co.uk) say that it stays.
test('The table of the mid-position valve has the published rest for each mix of white and grey', () => {
  const { cores, from, rows } = restTable(shelf.layout('three-port'), 'three-port');
  expect(cores.map(({ id }) => id)).toEqual(['white', 'grey']);
  expect(from).toEqual(['B', 'mid', 'A']);
  expect(rows).toEqual([
    { live: [false, false], rests: ['B', 'B', 'B'] },
    { live: [true, false], rests: ['mid', 'mid', 'mid'] },
    { live: [false, true], rests: ['B', 'A', 'A'] },
    { live: [true, true], rests: ['A', 'A', 'A'] },
  ]);
});

// Source: Approved Document G, 2015 edition with 2016 amendments, 3.31: it must shut by itself when its supply is lost.
test('A two-port valve rests open while brown is live, whatever grey carries, and shut while it is dead', () => {
  const { cores, rows } = restTable(shelf.layout('two-two-ports'), 'water-valve');
  const brown = cores.findIndex(({ id }) => id === 'brown');
  for (const { live, rests } of rows)
    expect(new Set(rests)).toEqual(new Set([live[brown] ? 'open' : 'shut']));
});

test('A valve that the layout does not have is refused with those it has', () => {
  expect(() => restTable(shelf.layout('three-port'), 'boiler')).toThrow(/three-port.*boiler/s);
});
