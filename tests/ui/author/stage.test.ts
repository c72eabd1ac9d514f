import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { playStage, stageWires } from '../../../src/course/stage.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { parseStage } from '../../../src/files/stage.ts';
import { writeStage } from '../../../src/files/stage-write.ts';
import {
  draftOf,
  freshStage,
  freshStep,
  readStageDraft,
  scriptOf,
} from '../../../src/ui/author/stage/draft.ts';
import { sayExpected, whatHolds } from '../../../src/ui/author/stage/expect.ts';
import { nameOfPlace, scriptTroubles } from '../../../src/ui/author/stage/troubles.ts';
import { viewOptions, viewsOf, viewWord } from '../../../src/ui/author/stage/views.ts';

const shelf = loadShelf();
const folder = new URL('../../../content/stage/', import.meta.url);
const scripts = readdirSync(folder).map((name) =>
  parseStage(readFileSync(new URL(name, folder), 'utf8'), name),
);
const said = (draft: Parameters<typeof scriptTroubles>[0]) =>
  scriptTroubles(draft, shelf.layout(draft.system)).map(
    ({ place, says }) => `${nameOfPlace(place)}: ${says}`,
  );

test('every script of the course comes off the desk as it went on, with nothing to put right', () => {
  expect(scripts.length).toBeGreaterThanOrEqual(4);
  for (const script of scripts) {
    const draft = draftOf(script);
    expect(readStageDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(scriptOf(draft)).toEqual(script);
    expect(said(draft)).toEqual([]);
  }
});

test('a caption cannot be left out', () => {
  const draft = { ...freshStage(), title: 'T', system: 'three-port', steps: [freshStep([])] };
  expect(said(draft)).toEqual(['Step 1, caption: Expected a caption.']);
});

test('what a step expects and the engine does not find is told with its step', () => {
  const step = { ...freshStep([]), says: 'The boiler fires.', expect: { fires: true } };
  const draft = { ...freshStage(), title: 'T', system: 'three-port', steps: [step] };
  expect(said(draft)[0]).toMatch(/^Step 1, what must hold: Expected what holds in this state; found/);
});

test('what the engine finds is what the check then proves, on every step of every script', () => {
  for (const script of scripts) {
    const { system } = shelf.layout(script.system);
    const wires = stageWires(shelf.layout(script.system), script);
    const states = playStage(system, wires, script);
    const steps = script.steps.map((step, k) => {
      const state = states[k];
      if (!state) throw new Error('expected a state for each step');
      const expect = whatHolds(wires, state, step.spot ?? []);
      return { ...step, expect };
    });
    for (const { expect: found } of steps) expect(Object.keys(found)).toContain('fires');
    const proved = parseStage(writeStage({ ...script, steps }), 'proved.yaml');
    expect(said(draftOf(proved))).toEqual([]);
  }
});

test('each thing that must hold is said in words', () => {
  const { system } = shelf.layout('three-port');
  const expected = {
    fires: true,
    heats: [],
    at: { 'three-port': 'B' },
    live: ['strip/1'],
    breaks: ['earthed'],
  };
  expect(sayExpected(system, expected).map(({ says }) => says)).toEqual([
    'The boiler fires',
    'Heat goes nowhere',
    'Three-port valve rests at B',
    'Live: terminal 1',
    'It breaks: earthed',
  ]);
});

test('one drawing, two beside each other, or none: each choice is told from the others and found again', () => {
  expect(new Set(viewOptions.map(({ value }) => value)).size).toBe(6);
  for (const { value } of viewOptions) expect(viewWord(viewsOf(value))).toBe(value);
  expect(viewsOf('')).toEqual([]);
});

test('a new step has a name that no other has', () => {
  expect(freshStep([{ id: 's1' }, { id: 's7' }]).id).toBe('s8');
});
