import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseStage } from '../../src/files/stage.ts';
import { writeStage } from '../../src/files/stage-write.ts';

const folder = new URL('../../content/stage/', import.meta.url);
const scripts = readdirSync(folder).map((name) =>
  parseStage(readFileSync(new URL(name, folder), 'utf8'), name),
);

test('every script of the course is the same after it was written and read again, and no byte changes then', () => {
  expect(scripts.length).toBeGreaterThanOrEqual(4);
  for (const script of scripts) {
    const once = writeStage(script, 'https://example.org/schema/stage.json');
    expect(parseStage(once, script.title)).toEqual(script);
    expect(writeStage(parseStage(once, script.title), 'https://example.org/schema/stage.json')).toBe(once);
  }
});

test('wires of a script keep their terminals, and a list that mends everything stays', () => {
  const script = {
    title: 'T',
    system: 'three-port',
    wires: [['spur/L', 'strip/1'] as const],
    view: ['strip' as const],
    steps: [
      { says: 'One.', set: { supply: 'on' }, fail: [], view: ['circuit' as const, 'pipework' as const] },
    ],
  };
  const text = writeStage(script);
  expect(parseStage(text, 'a.yaml')).toEqual(script);
  // YAML 1.1, which many editors still read, takes a bare on for true: https://yaml.org/type/bool.html
  expect(text).toContain('supply: "on"');
});
