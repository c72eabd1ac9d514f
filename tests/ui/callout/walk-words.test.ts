import { expect, test } from 'vitest';
import { allCandidates } from '../../../src/engine/diagnose/callout.ts';
import type { Candidate } from '../../../src/engine/diagnose/candidate.ts';
import { isolationActs } from '../../../src/engine/diagnose/isolation.ts';
import { arrive } from '../../../src/engine/diagnose/setup.ts';
import { siteShelf } from '../../../src/files/site/shelf.ts';
import { sayCleared } from '../../../src/ui/callout/cleared.ts';
import { sayRoute } from '../../../src/ui/callout/say-route.ts';

const { system, right } = siteShelf().layout('three-port');
const wires = right[0]?.wires ?? [];
const all = allCandidates(system, wires);
const without = (gone: (one: Candidate) => boolean) => all.filter((one) => !gone(one));
const failsIn = (part: string) => {
  const number = system.parts.findIndex(({ id }) => id === part);
  return ({ failures }: Candidate) => failures.some((one) => 'part' in one && one.part === number);
};

test('A part of which no fault is left is told as cleared', () => {
  expect(sayCleared(system, all, without(failsIn('three-port')))).toBe('It cleared the three-port valve.');
});

test('Where only some faults of a part are out, it says how many of how many', () => {
  const boiler = all.filter(failsIn('boiler'));
  const valve = all.filter(failsIn('three-port'));
  const said = sayCleared(system, [...boiler, ...valve], boiler.slice(0, 1));
  expect(said).toBe(
    `It cleared the three-port valve. It also ruled out ${boiler.length - 1} of ${boiler.length} faults of the boiler.`,
  );
});

test('A few that are out are told one by one', () => {
  const [one, two] = all.filter(failsIn('pump'));
  const said = sayCleared(
    system,
    all,
    without((it) => it === one || it === two),
  );
  expect(said).toMatch(/^It ruled out that the pump .+ and the pump .+\.$/);
});

test('Kinds of broken and wrong wires are counted, and named whole when none is left', () => {
  const broken = ({ failures }: Candidate) => failures.some((one) => 'wire' in one);
  const links = all.filter(({ strays }) => strays.length > 0);
  const said = sayCleared(
    system,
    all,
    without((it) => broken(it) || (links.includes(it) && it !== links[0])),
  );
  expect(said).toContain('every broken wire');
  expect(said).toContain(`${links.length - 1} of ${links.length} links too many`);
});

test('A test that rules nothing out is told so', () => {
  expect(sayCleared(system, all, all)).toMatch(/^It ruled nothing out/);
});

test('A whole safe isolation is one step of a route, with every part of it in order', () => {
  const setup = arrive(system, wires, { supply: 'on' });
  const [first, ...rest] = sayRoute(system, [...isolationActs(setup), { do: 'open', part: 'strip' }]);
  expect(first).toBe(
    'Isolate safely: find what feeds it (the fused spur), switch off, lock off, prove the tester, test every pair for dead and prove it again.',
  );
  expect(rest).toEqual(['Take the cover off the strip.']);
});

test('Controls that are set together are one step, and so are covers that come off together', () => {
  expect(
    sayRoute(system, [
      { do: 'operate', settings: { heating: 'on' } },
      { do: 'operate', settings: { room: 'calling' } },
      { do: 'open', part: 'strip' },
      { do: 'open', part: 'boiler' },
    ]),
  ).toEqual(['Set heating to on and room to calling.', 'Take the covers off the strip and the boiler.']);
});
