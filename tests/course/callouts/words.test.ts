import { describe, expect, test } from 'vitest';
import { saySettings } from '../../../src/course/callouts/settings-words.ts';
import { customerWords, foundWords } from '../../../src/course/callouts/words.ts';
import type { Complaint } from '../../../src/engine/diagnose/callout.ts';
import { settingsOf } from '../../../src/engine/model/system.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { sentencesOf, wordsOf } from '../../../src/files/site/prose.ts';
import { gradeOf } from '../../site/support/grade.ts';
import { rareWords } from '../../site/support/rare-words.ts';

const shelf = loadShelf();
const threePort = shelf.layout('three-port').system;
const complaint = (settings: Complaint['settings'], part: string, outcome: boolean): Complaint => ({
  settings,
  test: { kind: part === 'boiler' || part === 'pump' ? 'works' : 'warms', part },
  outcome,
});
const HEATING = { supply: 'on', heating: 'on', room: 'calling' };

/** What a customer says of one complaint, whatever the seed: the middle of the three sentences. */
const says = (one: Complaint) =>
  new Set(
    Array.from({ length: 40 }, (_, seed) =>
      sentencesOf(customerWords(threePort, { family: 'no-heating', complaints: [one] }, seed))[1]?.replace(
        /^(When|Whenever|If) /,
        '',
      ),
    ),
  );

describe('A customer', () => {
  test('says what stays cold though it was asked for', () => {
    const when = 'the heating is on and the room thermostat is turned up, the radiators';
    expect(says(complaint(HEATING, 'radiators', false))).toEqual(
      new Set([`${when} stay cold.`, `${when} never get warm.`, `${when} will not get warm.`]),
    );
  });

  test('says what gets hot though nobody asked, and what was turned down', () => {
    const when = 'the heating is on and the room thermostat is turned down, the radiators';
    expect(says(complaint({ supply: 'on', heating: 'on' }, 'radiators', true))).toEqual(
      new Set([`${when} get hot all the same.`, `${when} get warm without being asked.`]),
    );
  });

  test('says that a boiler runs with everything turned off', () => {
    for (const sentence of says(complaint({ supply: 'on' }, 'boiler', true)))
      expect(sentence).toMatch(
        /^With everything turned off, the boiler (runs all the same|comes on without)/,
      );
  });

  test('does not say that one thing is both so and not so', () => {
    for (const sentence of [1, 2, 3].map((seed) =>
      customerWords(
        threePort,
        {
          family: 'no-heating',
          complaints: [complaint(HEATING, 'radiators', true), complaint(HEATING, 'radiators', false)],
        },
        seed,
      ),
    ))
      expect(sentence).toContain('the radiators get warm one time and stay cold the next.');
  });

  test('says the same for the same seed, and does not repeat one text for every seed', () => {
    const callout = {
      family: 'no-heating',
      complaints: [complaint(HEATING, 'radiators', false), complaint(HEATING, 'boiler', false)],
    } as const;
    const texts = Array.from({ length: 60 }, (_, seed) => customerWords(threePort, callout, seed));
    expect(texts[7]).toBe(customerWords(threePort, callout, 7));
    expect(new Set(texts).size).toBeGreaterThan(30);
  });

  test('has no meter and cannot see a valve', () => {
    const reads = { ...complaint(HEATING, 'radiators', false), test: { kind: 'stands', part: 'three-port' } };
    expect(() =>
      customerWords(threePort, { family: 'no-heating', complaints: [reads as Complaint] }, 1),
    ).toThrow('expected what a customer can see or feel, found "stands"');
  });
});

test('How it is set on arrival is told in a sentence', () => {
  expect(foundWords(threePort, HEATING)).toBe('The heating is on and the room thermostat is turned up.');
  expect(foundWords(threePort, { supply: 'on' })).toBe('Everything is turned off when you come in.');
  expect(foundWords(threePort, {})).toBe('Everything is switched off at the wall.');
});

/** Every appliance or room that systems name: whoever lives there knows it. */
const names = new Set(
  shelf.layoutIds.flatMap((id) => {
    const { parts, inputs } = shelf.layout(id).system;
    return [...parts.map(({ name }) => name), ...inputs.map(({ label }) => label)].flatMap((name) =>
      wordsOf(name.toLowerCase()).flatMap((word) => word.split('-')),
    );
  }),
);

describe.each(shelf.layoutIds)('For every setting of %s', (id) => {
  const { system } = shelf.layout(id);
  const alone = system.inputs.map((_, k) => settingsOf(system, (1 << k) | (2 ** system.supplies.length - 1)));
  const clauses = [...alone, settingsOf(system, 2 ** system.inputs.length - 1)].flatMap((settings) =>
    saySettings(system, settings),
  );

  test('the words are plain: none of the trade but what hangs on the wall', () => {
    const rare = rareWords(clauses).filter((word) => !names.has(word) && !names.has(`${word}s`));
    expect(rare).toEqual([]);
    // What the data calls a setting is no way for a customer to put it.
    expect(clauses.filter((clause) => /calling|satisfied|tripped|healthy/.test(clause))).toEqual([]);
  });

  test('a complaint is read at about the age of 12', () => {
    const complaints = system.spec.demands.map((demand): Complaint => {
      const [when] = [demand.when].flat();
      const taker = system.parts.find(({ id: own }) => own === demand.heats);
      const kind = taker?.kind.work ? 'works' : 'warms';
      return {
        settings: { ...settingsOf(system, 2 ** system.supplies.length - 1), ...when },
        test: { kind, part: demand.heats },
        outcome: false,
      };
    });
    const text = customerWords(system, { family: 'no-heat-at-all', complaints }, 3);
    expect(gradeOf(sentencesOf(text))).toBeLessThanOrEqual(6.5);
  });
});
