import * as z from 'zod/mini';
import { wire } from './names.ts';
import { keys, list, map, text } from './shape.ts';

/** Acts that a visit has at most: nobody does more in an afternoon. */
export const MOST_ACTS = 2000;
/** Letters of a name. */
const MOST_NAME = 200;

const name = (expected: string) => text(expected).check(z.maxLength(MOST_NAME, { error: expected }));
const part = name('the id of a part');
const INSTRUMENTS = ['tester', 'volts', 'continuity', 'ohms'] as const;
const PAIRS = ['L-N', 'L-E', 'N-E'] as const;

const look = <const K extends string>(kind: K) =>
  keys(`a look: kind ${kind}, part`, { kind: z.literal(kind), part });
const testSays = 'a test: kind, and part, or instrument and between';
const test = z.discriminatedUnion(
  'kind',
  [
    look('works'),
    look('warms'),
    look('stands'),
    keys('a reading: kind reads, instrument, between', {
      kind: z.literal('reads'),
      instrument: z.enum(INSTRUMENTS, { error: `one of ${INSTRUMENTS.join(', ')}` }),
      between: wire,
    }),
  ],
  { error: testSays },
);

const alone = <const D extends string>(does: D) => keys(`an act: do ${does}`, { do: z.literal(does) });
const onPart = <const D extends string>(does: D) =>
  keys(`an act: do ${does}, part`, { do: z.literal(does), part });
const onWire = <const D extends string>(does: D) =>
  keys(`an act: do ${does}, wire`, { do: z.literal(does), wire });
const between = <const D extends string>(does: D) =>
  keys(`an act: do ${does}, between`, { do: z.literal(does), between: wire });

const actSays = 'an act: do, and what it is done with';
/** One thing done on a visit: see `Act` of the engine. */
export const actSchema = z.discriminatedUnion(
  'do',
  [
    keys('an act: do operate, settings', {
      do: z.literal('operate'),
      settings: map('settings: input: setting', name('the id of an input'), name('a setting')),
    }),
    keys('an act: do identify, supply', { do: z.literal('identify'), supply: part }),
    alone('isolate'),
    alone('lock'),
    alone('prove'),
    keys('an act: do dead-test, pair', {
      do: z.literal('dead-test'),
      pair: z.enum(PAIRS, { error: `one of ${PAIRS.join(', ')}` }),
    }),
    onPart('open'),
    onPart('close'),
    onWire('lift'),
    onWire('land'),
    between('bridge'),
    between('unbridge'),
    alone('reset'),
    keys('an act: do lever, valve', { do: z.literal('lever'), valve: part }),
    onPart('swap'),
    keys('an act: do test, test', { do: z.literal('test'), test }),
  ],
  { error: actSays },
);

const actsSay = `a list of at most ${MOST_ACTS} acts`;
export const actsSchema = list(actsSay, actSchema).check(z.maxLength(MOST_ACTS, { error: actsSay }));
