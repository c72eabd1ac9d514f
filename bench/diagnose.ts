import { openLibrary } from '../src/cli/library.ts';
import { makeBench } from '../src/engine/diagnose/bench.ts';
import { allCandidates, type Callout } from '../src/engine/diagnose/callout.ts';
import { consistent, enterAll, followAll, type Test } from '../src/engine/diagnose/evidence.ts';
import { expected, nextStep } from '../src/engine/diagnose/expert.ts';
import { judgeVisit } from '../src/engine/diagnose/judge.ts';
import { searchOn, startSearch } from '../src/engine/diagnose/search.ts';
import { arrive } from '../src/engine/diagnose/setup.ts';
import { nextTests } from '../src/engine/diagnose/strategy.ts';
import { complaintsOf } from '../src/engine/diagnose/symptom.ts';
import { looks } from '../src/engine/diagnose/tests.ts';
import { operate } from '../src/engine/diagnose/visit.ts';
import { atMost, type Section, sayTime, whole } from './figure.ts';
import { type Effort, timeAll } from './stopwatch.ts';

/** All candidates are filtered against a reading within one frame of a screen at 60 a second. */
const FRAME = 16e6;
/** The next test is chosen within a tenth of a second. */
const CHOICE = 100e6;

/** The largest system of the library, and a fault in it that many others look like. */
const LARGEST = 'six-zones';
const FAULT = 'wire: cyl-stat/COM strip/11';

/** How long the search for a fault takes on the largest system. */
export function timeDiagnosis(effort: Effort): Section {
  const asker = { file: 'bench', place: LARGEST };
  const { system, references } = openLibrary().system(LARGEST, asker);
  const [{ wires } = { wires: [] }] = references;
  const bench = makeBench(system);
  const candidates = allCandidates(system, wires);
  const fault = candidates.find(({ id }) => id === FAULT);
  if (!fault) throw new Error('no fault to look for');
  const [input] = system.inputs.filter(({ id }) => id === 'hot-water');
  if (!input) throw new Error('no hot water to call for');

  const found = { supply: 'on' };
  const setup = arrive(system, wires, found);
  const all = enterAll(bench, setup, candidates);
  const calling = operate(setup, { [input.id]: input.settings[1] });
  const neutral = system.nodes[system.supply.out.neutral] ?? '';
  const reading = (instrument: 'volts' | 'tester', node: number) => ({
    kind: 'reads' as const,
    instrument,
    between: [system.nodes[node] ?? '', neutral] as const,
  });
  const filter = (test: Test, outcome: number | boolean) => () =>
    consistent(setup, all, { test, outcome }).length;
  const nodes = Array.from({ length: system.terminals }, (_, node) => node);
  /** Every terminal in turn, so that no answer is kept from the last time. */
  let turn = 0;
  const each = (instrument: 'volts' | 'tester') => () =>
    filter(reading(instrument, nodes[turn++ % nodes.length] ?? 0), 230)();
  const [look] = looks(setup).filter(({ kind }) => kind === 'warms');
  if (!look) throw new Error('nothing to look at');

  const callout: Callout = {
    system,
    wires,
    fault,
    complaints: complaintsOf(bench, wires, fault, 1),
    found,
    seed: 1,
  };
  const search = startSearch(bench, callout, candidates);
  const act = { do: 'operate', settings: { [input.id]: input.settings[1] } } as const;

  const quick = timeAll(
    {
      volts: each('volts'),
      tester: each('tester'),
      look: filter(look, true),
      test: () => nextTests(setup, all).length,
      step: () => nextStep(bench, search.setup, search.worlds)?.gain ?? 0,
      one: () => searchOn(bench, search, { act }).worlds.length,
    },
    effort,
    { rounds: 7 },
  );
  const slow = timeAll(
    {
      start: () => startSearch(bench, callout, candidates).worlds.length,
      every: () => followAll(bench, calling, all).length,
      expected: () => expected(bench, callout, search.worlds).tests,
      judge: () => judgeVisit(bench, callout, candidates, [act], fault).left.length,
    },
    effort,
    { rounds: 3, roundMs: 1 },
  );
  const those = whole(search.worlds.length);
  return {
    title: `Fault finding (${LARGEST}: ${whole(candidates.length)} candidates, ${whole(system.places)} places of its valves)`,
    figures: [
      atMost('all candidates against a reading of volts', quick.volts, FRAME, sayTime),
      atMost('all candidates against a two-pole tester', quick.tester, FRAME, sayTime),
      atMost('all candidates against a look', quick.look, FRAME, sayTime),
      atMost('the next test as the visit stands, all candidates', quick.test, CHOICE, sayTime),
      atMost(
        `the next step of a good engineer, ${those} that share the symptom`,
        quick.step,
        CHOICE,
        sayTime,
      ),
      { what: `a control worked, ${those} that share the symptom`, value: sayTime(quick.one) },
      { what: 'a control worked, all candidates', value: sayTime(slow.every) },
      { what: 'the symptom told: all candidates on arrival', value: sayTime(slow.start) },
      { what: 'expected tests of a good engineer', value: sayTime(slow.expected) },
      { what: 'a visit judged', value: sayTime(slow.judge) },
    ],
  };
}
