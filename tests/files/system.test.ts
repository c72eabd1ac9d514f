import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FileError } from '../../src/files/error.ts';
import { applyMistake } from '../../src/files/mistake.ts';
import { expandLanding, parseSystem } from '../../src/files/system.ts';

const real = readFileSync(new URL('../../content/systems/unvented-three-port.yaml', import.meta.url), 'utf8');
const base = `${real.slice(0, real.indexOf('\nreferences:'))}
references:
  - id: short
    title: A start
    says: Only three wires.
    wires:
      strip/1: [spur/L, programmer/L]
      strip/2: [spur/N]
mistakes:
  - id: astray
    title: Line astray
    says: The line is in the wrong terminal.
    from: short
    lift: [[strip/1, programmer/L]]
    land: [[programmer/L, strip/3]]
    breaks: [permanent-line]
`;

/** What the parser says of the file with one piece of it changed. */
function messageOf(change: string, to: string): string {
  expect(base).toContain(change);
  try {
    parseSystem(base.replace(change, to), 'x.yaml');
  } catch (error) {
    if (error instanceof FileError) return error.message;
    throw error;
  }
  return 'sound';
}

test('a landing map stands for a wire from every entry to the terminal it is landed in', () => {
  expect(expandLanding({ 'strip/1': ['spur/L', 'programmer/L'], 'strip/2': ['strip/1'] })).toEqual([
    ['spur/L', 'strip/1'],
    ['programmer/L', 'strip/1'],
    ['strip/1', 'strip/2'],
  ]);
});

test('a mistake is its reference with wires lifted, whichever way round they are named, and others landed', () => {
  const { references, mistakes } = parseSystem(base, 'x.yaml');
  expect(mistakes.map((mistake) => applyMistake(references, mistake))).toEqual([
    [
      ['spur/L', 'strip/1'],
      ['spur/N', 'strip/2'],
      ['programmer/L', 'strip/3'],
    ],
  ]);
  expect(mistakes[0]?.advises).toEqual([]);
});

describe('a slip of the author is named with its place, and the likely word is offered', () => {
  test.each([
    ['a key misspelt', 'title: Three', 'titel: Three', 'top level: ', 'did you mean "title"?', '"titel"'],
    ['a key of a part misspelt', 'short: Spur', 'shrt: Spur', 'parts.spur: ', 'did you mean "short"?'],
    [
      'an unknown kind of part',
      'kind: boiler',
      'kind: boilr',
      'parts.boiler.kind: ',
      'did you mean "boiler"?',
    ],
    ['a part with capitals', 'spur: {', 'SPUR: {', 'parts.SPUR: ', 'an id: small letters'],
    ['a part called __proto__', 'spur: {', '__proto__: {', 'top level: ', '__proto__'],
    ['a key written twice', 'title: Three', 'id: Three', 'line ', 'column 1: ', 'unique'],
    ['brackets that do not close', 'spur: {', 'spur: {{', 'line ', 'column 3: '],
    [
      'a pipe to nowhere',
      'boiler/flow, pump/in',
      'boiler/flow, pump/inn',
      'pipes[0][1]: ',
      'did you mean "pump/in"?',
    ],
    [
      'a pipe with one end',
      '[boiler/flow, pump/in]',
      '[boiler/flow]',
      'pipes[0]: ',
      'two pipe ends',
      'a list of 1',
    ],
    ['an input that no part uses', 'heating: { label', 'cooling: { label', 'top level: ', 'cooling'],
    ['a demand for nobody', 'heats: coil', 'heats: coill', 'demands[0].heats: ', 'did you mean "coil"?'],
    [
      'a setting nobody makes',
      'room: calling',
      'room: shouting',
      'demands[1].when.room: ',
      'one of satisfied, calling',
    ],
    [
      'a position it has not',
      '{ shut: shut',
      '{ shot: shut',
      'parts.two-port.positions: ',
      'did you mean "shut"?',
    ],
    [
      'a wire to nowhere',
      '[spur/N]',
      '[spur/M]',
      'references[0].wires["strip/2"][0]: ',
      'a terminal of spur',
    ],
    [
      'a wire told twice',
      '[spur/N]',
      '[spur/N, spur/N]',
      'references[0].wires["strip/2"][1]: ',
      'every wire once',
    ],
    ['a mistake from nowhere', 'from: short', 'from: shot', 'mistakes[0].from: ', 'did you mean "short"?'],
    [
      'a wire lifted that is not there',
      'strip/1, programmer',
      'strip/2, programmer',
      'mistakes[0].lift[0]: ',
      'short',
    ],
    [
      'a wire landed that is there',
      'L, strip/3]',
      'L, strip/3], [spur/N, strip/2]',
      'mistakes[0].land[1]: ',
      'not there',
    ],
    [
      'a rule nobody made',
      '[permanent-line]',
      '[permanent-lne]',
      'mistakes[0].breaks[0]: ',
      'did you mean "permanent-line"?',
    ],
    [
      'advice among the faults',
      '[permanent-line]',
      '[crowded-terminal]',
      'mistakes[0].breaks[0]: ',
      'one of',
    ],
    ['two wirings of one name', 'id: astray', 'id: short', 'mistakes[0].id: ', 'no other wiring has'],
  ])('%s', (_, change, to, place, ...words) => {
    const message = messageOf(change, to);
    expect(message.startsWith(`x.yaml: ${place}`)).toBe(true);
    for (const word of words) expect(message).toContain(word);
    expect(message).not.toContain('\n');
  });

  test('brackets 100,000 deep', () => {
    expect(() => parseSystem('['.repeat(100_000), 'x.yaml')).toThrow(FileError);
  });
});
