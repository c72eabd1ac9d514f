import { perform } from '../../engine/diagnose/act.ts';
import { branchesOf, gainOf } from '../../engine/diagnose/answers.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { Memo } from '../../engine/diagnose/cluster.ts';
import { costs } from '../../engine/diagnose/costs.ts';
import { ask, type Outcome, type Test } from '../../engine/diagnose/evidence.ts';
import type { Allowed } from '../../engine/diagnose/expert.ts';
import { isolationActs } from '../../engine/diagnose/isolation.ts';
import type { Setup } from '../../engine/diagnose/setup.ts';
import { costOf, coversOn } from '../../engine/diagnose/tests.ts';
import type { World } from '../../engine/diagnose/world.ts';
import { bitsOf, partNamed, type Settings, type System } from '../../engine/model/system.ts';
import { siteClass } from './agrees.ts';
import { changedOver, handControls, isOnWith, withSupplies } from './controls.ts';
import type { Inquiry } from './inquiry.ts';
import { answerTo, type Moment, withFind } from './note.ts';
import { deadReadings, liveReadings, outsideLooks } from './readings.ts';
import { symptomsOf } from './symptoms.ts';

/** An answer that a test may give, and how many candidates would explain it. */
export interface Answer {
  readonly outcome: Outcome;
  readonly left: number;
}

/** What to do next: how the controls have to stand, then a test. */
export interface NextTest {
  readonly settings: Settings;
  /** The settings that differ from those of the moment it follows. */
  readonly changes: Settings;
  /** The supply comes on again after readings: covers go back on first. */
  readonly coversBack: boolean;
  /** None for a look; dead after safe isolation, or live. */
  readonly danger: 'none' | 'dead' | 'live';
  /** Ids of the parts to open for it that, as far as is known, are shut. */
  readonly covers: readonly string[];
  readonly test: Test;
  readonly answers: readonly Answer[];
  /** The most candidates that any answer leaves, and how many there are now. */
  readonly most: number;
  readonly of: number;
}

/**
 * With more candidates than this a test is chosen by an even sample of them, a smaller one where the valves can stand in
 * many ways; what its answers leave is always exact.
 */
const SAMPLE = 64;
const SMALL_SAMPLE = 16;
const MANY_PLACES = 1000;
/** So many of the most promising tests are worked out in full. */
const TRIED = 24;

interface Plan {
  readonly settings: Settings;
  readonly tests: readonly Test[];
  /** Of getting there, in the unit of `costs`. */
  readonly cost: number;
}

/** What could be tried first: looks at once or with one control changed; readings with the controls as they are. */
function plans({ system, wires }: Inquiry, { settings }: Moment, who: Allowed): Plan[] {
  const seen = outsideLooks(system);
  const on = isOnWith(system, settings);
  // With the supply off there is nothing to see: looks begin with switching on.
  const lit = on ? settings : withSupplies(system, settings, 1);
  const live = who === 'live' ? liveReadings(system, wires) : [];
  const dead = who === 'looks' ? [] : deadReadings(system, wires);
  return [
    { settings: lit, tests: on ? [...seen, ...live] : seen, cost: on ? 0 : costs.operate },
    ...changed(system, lit).map((other) => ({ settings: other, tests: seen, cost: costs.operate })),
    { settings: withSupplies(system, settings, 0), tests: dead, cost: on ? costs.operate : 0 },
  ];
}

/** What could be tried when none of that tells more: looks under any common call, readings with one control changed. */
function morePlans({ system, wires }: Inquiry, { settings }: Moment, who: Allowed): Plan[] {
  const seen = outsideLooks(system);
  const hands = new Set(handControls(system));
  const calls = symptomsOf(system).map((one) => ({
    // What no hand sets stays as it is.
    settings: Object.fromEntries(
      Object.entries(settings).map(([id, now]) => [id, hands.has(id) ? (one.settings[id] ?? now) : now]),
    ),
    tests: seen,
    cost: 2 * costs.operate,
  }));
  if (who === 'looks') return calls;
  const dead = deadReadings(system, wires);
  const live = who === 'live' ? liveReadings(system, wires) : [];
  const cost = 2 * costs.operate;
  return [
    ...calls,
    ...changed(system, withSupplies(system, settings, 0)).map((off) => ({
      settings: off,
      tests: dead,
      cost,
    })),
    ...changed(system, withSupplies(system, settings, 1)).map((on) => ({ settings: on, tests: live, cost })),
  ];
}

/** Settings with one control, no supply, changed by hand. */
function changed(system: System, settings: Settings): Settings[] {
  const supplies = new Set(system.supplies.map(({ input }) => system.inputs[input]?.id));
  return handControls(system)
    .filter((id) => !supplies.has(id))
    .map((id) => changedOver(system, settings, id));
}

/** The setup that costs are counted from: covers of parts that were measured are off, and a dead reading was taken after safe isolation. */
function asLeft(inquiry: Inquiry, settings: Settings, moments: readonly Moment[]): Setup {
  const { system } = inquiry;
  const setup = inquiry.setup(settings);
  const finds = moments.flatMap((moment) => moment.finds);
  const measured = finds.flatMap(({ test }) => coversOn(setup, test));
  const open = { ...setup, open: new Set(measured) };
  if (isOnWith(system, settings) || measured.length === 0) return open;
  return isolationActs(open).reduce((now: Setup, act) => perform(now, act).next, open);
}

/** The answers to offer for a test. */
function answersTo(system: System, test: Test): Outcome[] {
  if (test.kind === 'stands') {
    const { mover } = partNamed(system, test.part);
    return [...(system.movers[mover]?.positions ?? [])];
  }
  if (test.kind !== 'reads' || test.instrument === 'continuity') return [true, false];
  if (test.instrument === 'ohms') return [0, 5_000, Number.POSITIVE_INFINITY];
  return test.instrument === 'tester' ? [230, 120, 0] : [230, 60, 0];
}

/**
 * The test that tells most for its cost, of those that somebody may make: looks and controls only, dead tests too, or
 * live ones too. Undefined when none tells the candidates apart.
 */
export function chooseNext(
  inquiry: Inquiry,
  moments: readonly Moment[],
  moment: Moment,
  left: readonly Candidate[],
  who: Allowed,
): NextTest | undefined {
  if (left.length < 2) return undefined;
  const best = (some: readonly Plan[]) => bestOf(inquiry, moments, moment, left, some);
  return best(plans(inquiry, moment, who)) ?? best(morePlans(inquiry, moment, who));
}

function bestOf(
  inquiry: Inquiry,
  moments: readonly Moment[],
  moment: Moment,
  left: readonly Candidate[],
  some: readonly Plan[],
): NextTest | undefined {
  const { system } = inquiry;
  const few = sample(left, system.places > MANY_PLACES ? SMALL_SAMPLE : SAMPLE);
  const choices = some.flatMap(({ settings, tests, cost }) => {
    const there = momentAt(system, moment, settings);
    const alike = moments.filter((one) => sameSettings(system, one.settings, settings));
    const open = tests.filter((test) => !alike.some((one) => answerTo(one, test)));
    const setup = asLeft(inquiry, settings, moments);
    // Covers go back before anybody switches on to look.
    const back = isOnWith(system, settings) && !isOnWith(system, moment.settings) ? setup.open.size : 0;
    return gains(setup, inquiry.explaining(there, few), open).map(({ test, gain }) => ({
      there,
      setup,
      test,
      worth: gain / (cost + back * costs.cover + costOf(setup, test)),
    }));
  });
  choices.sort((a, b) => b.worth - a.worth);
  for (const { there, setup, test } of choices.slice(0, TRIED)) {
    const answers = answersTo(system, test)
      .map((outcome) => ({
        outcome,
        left: inquiry.explaining(withFind(there, { test, outcome }), left).length,
      }))
      .filter((answer) => answer.left > 0);
    const most = Math.max(...answers.map((answer) => answer.left));
    if (most === left.length) continue;
    return {
      settings: there.settings,
      changes: changesTo(moment.settings, there.settings),
      coversBack:
        !isOnWith(system, moment.settings) && isOnWith(system, there.settings) && setup.open.size > 0,
      danger: test.kind !== 'reads' ? 'none' : isOnWith(system, there.settings) ? 'live' : 'dead',
      covers: coversOn(setup, test),
      test,
      answers,
      most,
      of: left.length,
    };
  }
  return undefined;
}

/**
 * The moment that an answer would be entered in: the current one while its controls stay, else a new one. Never an
 * earlier one with the same controls, for the valves may have come to rest elsewhere since.
 */
export const momentAt = (system: System, current: Moment, settings: Settings): Moment =>
  sameSettings(system, current.settings, settings) ? current : { settings, finds: [] };

const sameSettings = (system: System, a: Settings, b: Settings): boolean =>
  bitsOf(system, a) === bitsOf(system, b);

/** Every so-manieth of a list, so that at most `most` are left. */
const sample = (left: readonly Candidate[], most: number): readonly Candidate[] =>
  left.filter((_, k) => left.length <= most || k % Math.ceil(left.length / most) === 0);

const changesTo = (from: Settings, to: Settings): Settings =>
  Object.fromEntries(Object.entries(to).filter(([id, setting]) => from[id] !== setting));

/** What each test is expected to tell, in bits, by answers that a real meter can tell apart. */
function gains(setup: Setup, worlds: readonly World[], tests: readonly Test[]) {
  const memo: Memo = new Map();
  const among = worlds.map((_, k) => k);
  return tests.flatMap((test) => {
    const shows = ask(setup, test, memo);
    const number = new Map<string, number>();
    const of = worlds.map(({ stands }) => {
      const own = new Set(stands.map((stand) => siteClass(test, shows(stand))));
      for (const name of own) number.set(name, number.get(name) ?? number.size);
      return [...own].map((name) => number.get(name) ?? 0);
    });
    const answers = { test, cost: 1, kinds: number.size, of };
    // Every answer has to rule something out: else the aid would send people round for little.
    const halves = branchesOf(answers, among).every((branch) => branch.left.length < worlds.length);
    return halves && number.size > 1 ? [{ test, gain: gainOf(answers, among) }] : [];
  });
}
