import { expect, test } from 'vitest';
import { type Act, perform } from '../../../src/engine/diagnose/act.ts';
import type { Test } from '../../../src/engine/diagnose/evidence.ts';
import { isolationActs } from '../../../src/engine/diagnose/isolation.ts';
import type { Entry } from '../../../src/engine/diagnose/replay.ts';
import { arrive, provedDead, type Setup } from '../../../src/engine/diagnose/setup.ts';
import { siteShelf } from '../../../src/files/site/shelf.ts';
import { hintFor } from '../../../src/ui/callout/hint.ts';
import { isolationSteps } from '../../../src/ui/callout/isolation.ts';
import { seenIn } from '../../../src/ui/callout/seen.ts';

const { system, right } = siteShelf().layout('three-port');
const wires = right[0]?.wires ?? [];
const enclosures = system.parts.filter(({ kind }) => kind.terminals.length > 0);
const LIVE = { supply: 'on' };

/** Does all this, and gives what is known after it. */
function after(acts: readonly Act[]): { setup: Setup; entries: Entry[]; enclosures: typeof enclosures } {
  let setup = arrive(system, wires, LIVE);
  const entries = acts.map((act): Entry => {
    const { next, cost, breaches } = perform(setup, act);
    setup = next;
    return { act, cost, breaches, ...(act.do === 'test' && { outcome: true }) };
  });
  return { setup, entries, enclosures };
}

const boiler: Test = { kind: 'works', part: 'boiler' };
const look: Act = { do: 'test', test: boiler };
const isolation = isolationActs(arrive(system, wires, LIVE));
const open: Act = { do: 'open', part: 'strip' };
const beep: Act = {
  do: 'test',
  test: { kind: 'reads', instrument: 'continuity', between: ['strip/1', 'strip/2'] },
};

test('The steps of isolation on the page are those that the engine asks for, in its order, and each gets its tick', () => {
  // The order is that of the trade's safe isolation procedure (common practice): `isolation.ts` of the engine.
  const steps = isolationSteps(arrive(system, wires, LIVE));
  expect(steps.map(({ act }) => act)).toEqual(isolation);
  isolation.forEach((_, k) => {
    const { setup } = after(isolation.slice(0, k + 1));
    expect(isolationSteps(setup).filter(({ done }) => done)).toHaveLength(k + 1);
  });
  expect(provedDead(after(isolation).setup)).toBe(true);
});

test('Switching on again takes every tick away but that of the supply that was found', () => {
  const { setup } = after([...isolation, { do: 'operate', settings: LIVE }]);
  expect(isolationSteps(setup).flatMap(({ id, done }) => (done ? [id] : []))).toEqual(['identify spur']);
});

test('The page leads from looking to isolating, from isolating to measuring, and from there to saying what is wrong', () => {
  const way = [
    after([]),
    after([look]),
    after([look, ...isolation.slice(0, 3)]),
    after([look, ...isolation]),
    after([look, ...isolation, open]),
    after([look, ...isolation, open, beep, beep]),
  ];
  expect(way.map((now) => hintFor(now).stage)).toEqual([
    'try',
    'isolate',
    'isolate',
    'measure',
    'measure',
    'say',
  ]);
});

test('What was seen is old news once a control was changed, and fresh again after another look', () => {
  const fresh = (acts: readonly Act[]) => seenIn(after(acts).entries).get('works boiler')?.fresh;
  const heat: Act = { do: 'operate', settings: { heating: 'on' } };
  expect(fresh([heat])).toBe(undefined);
  expect(fresh([look])).toBe(true);
  expect(fresh([look, { do: 'identify', supply: 'spur' }])).toBe(true);
  expect(fresh([look, heat])).toBe(false);
  expect(fresh([look, heat, look])).toBe(true);
});
