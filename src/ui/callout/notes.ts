import type { Act } from '../../engine/diagnose/act.ts';
import type { Outcome, Test } from '../../engine/diagnose/evidence.ts';
import type { Instrument } from '../../engine/diagnose/instrument.ts';
import type { Entry } from '../../engine/diagnose/replay.ts';
import { partNamed, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, isAre, list, sayNode } from '../../engine/rules/words.ts';

/** An instrument by its name. */
export const INSTRUMENTS: Readonly<Record<Instrument, string>> = {
  tester: 'two-pole tester',
  volts: 'multimeter on volts',
  continuity: 'multimeter on continuity',
  ohms: 'multimeter on ohms',
};

const nameOf = (system: System, part: string): string => partNamed(system, part).name.toLowerCase();

/** A terminal or pole inside a sentence: "terminal 7", "three-port valve white". */
export function sayTerminal(system: System, name: string): string {
  const node = system.nodeOf.get(name);
  return node === undefined ? name : sayNode(system, node);
}

/** Two terminals: "terminal 7 to terminal 9". */
export const sayPair = (system: System, [a, b]: Wire): string =>
  `${sayTerminal(system, a)} to ${sayTerminal(system, b)}`;

/** What an instrument shows, short: "230 V", "beeps", "no lamp". */
export function sayShown(instrument: Instrument, shown: Outcome): string {
  if (shown === 'refused') return 'no reading: volts on the circuit';
  if (instrument === 'tester') return shown === 0 ? 'no lamp lights' : `the ${shown} V lamp lights`;
  if (instrument === 'volts') return `${shown} V`;
  if (instrument === 'continuity') return shown ? 'beeps: joined' : 'silent: not joined';
  return shown === Number.POSITIVE_INFINITY ? 'open: no way through' : `${shown} Ω`;
}

const DOES = {
  fires: ['fires', 'does not fire'],
  pumps: ['runs', 'does not run'],
  heats: ['heats', 'does not heat'],
};

/** What somebody asks with a test, without its answer. */
export function sayTest(system: System, test: Test): string {
  if (test.kind === 'reads')
    return `${capital(INSTRUMENTS[test.instrument])}, ${sayPair(system, test.between)}`;
  const { name, kind } = partNamed(system, test.part);
  if (test.kind === 'stands') return `See where the ${name.toLowerCase()} stands`;
  if (test.kind === 'warms') return `Feel the ${name.toLowerCase()}`;
  return `${kind.work?.does === 'pumps' ? 'Listen to' : 'Look at'} the ${name.toLowerCase()}`;
}

/** A test and its answer in a sentence. */
export function sayOutcome(system: System, test: Test, outcome: Outcome): string {
  if (test.kind === 'reads') return `${sayTest(system, test)}: ${sayShown(test.instrument, outcome)}.`;
  const { name, kind } = partNamed(system, test.part);
  const the = `The ${name.toLowerCase()}`;
  if (test.kind === 'stands') {
    const words = system.spec.parts[test.part]?.positions?.[String(outcome)] ?? String(outcome);
    return `${the} is ${words}.`;
  }
  if (test.kind === 'warms') return `${the} ${isAre(name)} ${outcome ? 'getting warm' : 'not getting warm'}.`;
  return `${the} ${DOES[kind.work?.does ?? 'fires'][outcome ? 0 : 1]}.`;
}

/** What was done, in a sentence that begins with the deed. */
export function sayAct(system: System, act: Act): string {
  switch (act.do) {
    case 'operate':
      return `Set ${list(
        Object.entries(act.settings).map(([id, setting]) => {
          const label = system.inputs.find((input) => input.id === id)?.label ?? id;
          return `${label.toLowerCase()} to ${setting}`;
        }),
      )}.`;
    case 'identify':
      return `Found what feeds this system: the ${nameOf(system, act.supply)}.`;
    case 'isolate':
      return 'Switched the supply off.';
    case 'lock':
      return 'Locked it off and put the warning notice on.';
    case 'prove':
      return 'Proved the tester on a known source.';
    case 'dead-test':
      return `Tested for dead, ${act.pair.replace('-', ' to ')}.`;
    case 'open':
      return `Took the cover off the ${nameOf(system, act.part)}.`;
    case 'close':
      return `Put the cover back on the ${nameOf(system, act.part)}.`;
    case 'lift':
      return `Lifted the wire from ${sayPair(system, act.wire)}.`;
    case 'land':
      return `Landed the wire from ${sayPair(system, act.wire)} again.`;
    case 'bridge':
      return `Bridged ${sayPair(system, act.between)} for a test.`;
    case 'unbridge':
      return `Took the bridge from ${sayPair(system, act.between)} out.`;
    case 'reset':
      return 'Pressed the reset of the cut-out.';
    case 'lever':
      return `Worked the manual lever of the ${nameOf(system, act.valve)}.`;
    case 'swap':
      return partNamed(system, act.part).kind.supply
        ? `Put a new fuse in the ${nameOf(system, act.part)}.`
        : `Changed the ${nameOf(system, act.part)} for a new one.`;
    case 'test':
      return `${sayTest(system, act.test)}.`;
  }
}

/** A line of the notebook: what was done and what came of it. */
export function sayEntry(system: System, { act, outcome }: Entry): string {
  if (outcome === undefined) return sayAct(system, act);
  if (act.do === 'test') return sayOutcome(system, act.test, outcome);
  return `${sayAct(system, act)} ${capital(sayShown('tester', outcome))}.`;
}
