import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Observation } from '../../../src/engine/diagnose/evidence.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { looks } from '../../../src/engine/diagnose/tests.ts';
import { readLink, writeLink } from '../../../src/ui/aid/link.ts';
import {
  fitsControls,
  freshNote,
  type Moment,
  type Note,
  testKey,
  withFind,
} from '../../../src/ui/aid/note.ts';
import { deadReadings, liveReadings } from '../../../src/ui/aid/readings.ts';
import { librarySystems } from '../../engine/support/library.ts';
import { must } from '../../engine/support/must.ts';

const threePort = must(librarySystems.find(({ id }) => id === 'three-port'));
const { system } = threePort;
const wirings = threePort.references.map(({ id }) => id);

/** Any visit to a system: any controls, any findings that go with them, in any number of moments. */
function anyNote({ system, references }: (typeof librarySystems)[number]): fc.Arbitrary<Note> {
  const wires = must(references[0]).wires;
  const all = [
    ...looks(arrive(system, wires, {})),
    ...liveReadings(system, wires),
    ...deadReadings(system, wires),
  ];
  const find = fc.constantFrom(...all).chain((one): fc.Arbitrary<Observation> => {
    const outcomes =
      one.kind === 'stands'
        ? (system.movers[must(system.parts.find(({ id }) => id === one.part)).mover]?.positions ?? [])
        : one.kind !== 'reads' || one.instrument === 'continuity'
          ? [true, false]
          : one.instrument === 'ohms'
            ? [0, 0.4, 8817, Number.POSITIVE_INFINITY]
            : [0, 12, 230];
    return fc.constantFrom(...outcomes).map((outcome) => ({ test: one, outcome }));
  });
  const settings = fc
    .tuple(...system.inputs.map(({ settings: [rest, active] }) => fc.constantFrom(rest, active)))
    .map((some) => Object.fromEntries(some.map((setting, k) => [must(system.inputs[k]).id, setting])));
  const moment = fc.tuple(settings, fc.array(find, { maxLength: 5 })).map(([stand, finds]): Moment => {
    const fitting = finds.filter((one) => fitsControls(system, stand, one.test));
    return fitting.reduce(withFind, { settings: stand, finds: [] });
  });
  return fc.record({
    wiring: fc.constantFrom(...references.map(({ id }) => id)),
    who: fc.constantFrom('looks', 'dead', 'live'),
    history: fc.constantFrom('worked', 'altered'),
    moments: fc.array(moment, { minLength: 1, maxLength: 4 }),
  });
}

test.each(librarySystems.map((one) => [one.id, one] as const))(
  'A link to %s brings back every visit as it was',
  (_, site) => {
    const ids = site.references.map(({ id }) => id);
    fc.assert(
      fc.property(anyNote(site), (note) => {
        const link = writeLink(site.system, note);
        expect(readLink(site.system, ids, link)).toEqual({ note, problems: [] });
      }),
      { numRuns: 30 },
    );
  },
);

test('A link can be read by eye', () => {
  const note = freshNote(system, must(wirings[0]));
  const moment = withFind(must(note.moments[0]), { test: { kind: 'works', part: 'boiler' }, outcome: false });
  expect(writeLink(system, { ...note, moments: [moment] })).toBe(
    '#who=looks&history=worked&wiring=call-on-the-switched-line' +
      '&with=supply:on,hot-water:off,heating:off,room:satisfied,cylinder:satisfied&works=boiler:no',
  );
});

test('An empty link is a fresh visit by somebody who is not qualified', () => {
  const { note, problems } = readLink(system, wirings, '');
  expect(note).toEqual(freshNote(system, must(wirings[0])));
  expect(note.who).toBe('looks');
  expect(problems).toEqual([]);
});

test.each([
  ['who=boss', 'who is at work as “boss”'],
  ['history=long', 'the history as “long”'],
  ['wiring=mine', 'no drawing “mine”'],
  ['with=supply:on,attic:on', 'no control “attic”'],
  ['with=supply:maybe', '“Supply” cannot be “maybe”: it is off or on'],
  ['works=boler:no', 'no part “boler”'],
  ['works=radiators:no', '“works” cannot be asked of the radiators'],
  ['works=boiler:perhaps', '“perhaps” is no answer'],
  ['stands=three-port:C', '“C” is no answer'],
  ['tester=strip/6:strip/99:230', 'no terminal “strip/99”'],
  ['tester=strip/6:strip/6:230', 'needs two terminals'],
  ['tester=strip/6:strip/9:lots', '“lots” is no answer'],
  ['ohms=strip/6:strip/9:0.4', 'does not go with the supply'],
  ['smells=boiler:yes', '“smells” is nothing that can be found'],
  ['nonsense', '“nonsense” is nothing that can be found'],
])('A link with “%s” keeps what can be read and tells what cannot', (line, words) => {
  const link = `#with=supply:on&works=pump:no&${line}`;
  const { note, problems } = readLink(system, wirings, link);
  expect(problems.join(' ')).toContain(words);
  const finds = note.moments.flatMap((moment) => moment.finds.map((find) => testKey(find.test)));
  expect(finds).toEqual(['works:pump']);
  expect(note.who).toBe('looks');
});

test('Whatever is typed after the # of the address, the page has a visit to show', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const { note } = readLink(system, wirings, `#${text}`);
      expect(note.moments.length).toBeGreaterThan(0);
      expect(wirings).toContain(note.wiring);
    }),
  );
});
