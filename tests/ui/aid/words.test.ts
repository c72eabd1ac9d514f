import { expect, test } from 'vitest';
import { makeBench } from '../../../src/engine/diagnose/bench.ts';
import { candidateOf } from '../../../src/engine/diagnose/candidate.ts';
import { outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { enter } from '../../../src/engine/diagnose/world.ts';
import { handControls, isOnWith, withSupplies } from '../../../src/ui/aid/controls.ts';
import { freshNote, withFind, withoutFind } from '../../../src/ui/aid/note.ts';
import { noteText } from '../../../src/ui/aid/note-text.ts';
import { placesOf } from '../../../src/ui/aid/places.ts';
import { deadReadings, liveReadings, outsideLooks } from '../../../src/ui/aid/readings.ts';
import { landedOn, sayFind, sayQuestion, saySettings } from '../../../src/ui/aid/say.ts';
import { symptomsOf } from '../../../src/ui/aid/symptoms.ts';
import { librarySystems } from '../../engine/support/library.ts';
import { must } from '../../engine/support/must.ts';

const rows = librarySystems.map((one) => [one.id, one] as const);
const of = (id: string) => must(librarySystems.find((one) => one.id === id));

test.each(rows)('On %s no complaint is what the healthy system does', (_, { system, references }) => {
  const { wires } = must(references[0]);
  const bench = makeBench(system);
  for (const { says, settings, finds } of symptomsOf(system)) {
    const setup = arrive(system, wires, settings);
    const { stands } = enter(bench, setup, candidateOf(system, []));
    const fits = stands.some((stand) =>
      finds.every(({ test: one, outcome }) => outcomeAt(setup, stand, one) === outcome),
    );
    expect(fits, says).toBe(false);
  }
});

test('The complaints of a three-port are those that people have', () => {
  expect(symptomsOf(of('three-port').system).map(({ says }) => says)).toEqual([
    'No hot water',
    'No heating',
    'Nothing works',
    'Boiler never stops',
    'Radiators get hot with only hot water on',
  ]);
});

test('Switches and outside dials are set by hand; trips, weather and dials under a cover are not', () => {
  expect(handControls(of('six-zones').system)).not.toEqual(expect.arrayContaining(['cut-out']));
  expect(handControls(of('six-zones').system)).not.toEqual(expect.arrayContaining(['frost']));
  expect(handControls(of('three-port').system)).toEqual([
    'supply',
    'hot-water',
    'heating',
    'room',
    'cylinder',
  ]);
  // The dial of an immersion heater is under its cover.
  expect(handControls(of('twin-immersion').system)).toEqual(['night-supply', 'day-supply', 'boost']);
});

test.each(rows)('On %s every supply goes off and on together', (_, { system }) => {
  const { settings } = must(symptomsOf(system)[0]);
  expect(isOnWith(system, withSupplies(system, settings, 0))).toBe(false);
  expect(isOnWith(system, withSupplies(system, settings, 1))).toBe(true);
});

test.each(rows)(
  'On %s looks need no cover off, and both probes of a live reading are in one enclosure',
  (_, { system, references }) => {
    const { wires } = must(references[0]);
    expect(outsideLooks(system).every(({ kind }) => kind !== 'reads')).toBe(true);
    for (const one of liveReadings(system, wires)) {
      if (one.kind !== 'reads') throw new Error(one.kind);
      const [a, b] = one.between.map((end) => end.split('/')[0]);
      expect(a).toBe(b);
      expect(one.instrument).toBe('tester');
    }
    for (const one of deadReadings(system, wires)) {
      expect(one.kind === 'reads' && ['continuity', 'ohms']).toContain(
        one.kind === 'reads' && one.instrument,
      );
    }
  },
);

test('A strip numbered otherwise is found by what is landed on it', () => {
  const { system, references } = of('three-port');
  expect(landedOn(system, must(references[0]).wires, 'strip/6')).toBe(
    'Cyl stat CALL, 3-port orange, Boiler SL, Pump L',
  );
  expect(landedOn(system, must(references[0]).wires, 'strip/7')).toBe('');
});

test('Questions and findings are said as people say them', () => {
  const { system } = of('three-port');
  expect(sayQuestion(system, { kind: 'warms', part: 'radiators' })).toBe('Do the radiators get warm?');
  expect(sayQuestion(system, { kind: 'works', part: 'boiler' })).toBe('Does the boiler fire?');
  expect(sayFind(system, { test: { kind: 'works', part: 'pump' }, outcome: false })).toBe(
    'The pump does not run.',
  );
  expect(sayFind(system, { test: { kind: 'stands', part: 'three-port' }, outcome: 'A' })).toBe(
    'The three-port valve stands: open to the radiators only.',
  );
  expect(
    sayFind(system, {
      test: { kind: 'reads', instrument: 'ohms', between: ['strip/3', 'strip/9'] },
      outcome: 2_400,
    }),
  ).toBe('Ohms: terminal 3 to terminal 9: 2.4 kΩ.');
  expect(
    saySettings(system, {
      supply: 'on',
      'hot-water': 'off',
      heating: 'on',
      room: 'calling',
      cylinder: 'satisfied',
    }),
  ).toBe('supply on, heating on, room calling; hot water off, cylinder satisfied');
});

test('What moves or switches comes before wires, wires before what was wired wrong, and nothing at all last', () => {
  const { system } = of('three-port');
  const part = (id: string, failure: string) => {
    const found = system.parts.findIndex((one) => one.id === id);
    const spec = must(must(system.parts[found]).kind.failures?.find((one) => one.id === failure));
    return candidateOf(system, [{ part: found, spec }]);
  };
  const wire = candidateOf(system, [{ wire: ['pump/L', 'strip/6'] }]);
  const link = candidateOf(system, [], [], [['strip/3', 'strip/4']]);
  const groups = [[candidateOf(system, [])], [link], [wire], [part('three-port', 'motor dead')]];
  expect(placesOf(system, groups).map(({ name }) => name)).toEqual([
    'Three-port valve',
    'Loose or broken wires',
    'Wired wrong',
    'Nothing in this wiring',
  ]);
  const alike = must(placesOf(system, [[wire, part('pump', 'dead')]])[0]);
  expect(alike.name).toBe('Pump');
  expect(must(alike.suspects[0]).alike).toEqual([wire.says]);
});

test('A note for the engineer tells the system, what was found with which controls, and where to look', () => {
  const { system, references } = of('three-port');
  const fresh = freshNote(system, must(references[0]).id);
  const find = { test: { kind: 'works', part: 'boiler' }, outcome: false } as const;
  const moment = withFind(must(fresh.moments[0]), find);
  const remains = {
    total: 68,
    left: 1,
    groups: 1,
    places: [{ name: 'Boiler', suspects: [{ says: 'The boiler does not fire', alike: [] }] }],
    misfits: [],
    ifAltered: 0,
  };
  const text = noteText(system, must(references[0]).title, { ...fresh, moments: [moment] }, remains);
  for (const line of [
    'System: Three-port with a vented cylinder',
    'Entered by: I am not qualified to work on wiring',
    '1. With supply on;',
    '   - The boiler does not fire.',
    '- Boiler: The boiler does not fire',
    'It proves nothing',
  ]) {
    expect(text).toContain(line);
  }
  expect(withoutFind(moment, find.test).finds).toEqual([]);
  expect(noteText(system, '', fresh, undefined)).toContain('Nothing entered yet.');
});
