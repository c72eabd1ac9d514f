import type { Observation, Outcome, Test } from '../../engine/diagnose/evidence.ts';
import type { Instrument } from '../../engine/diagnose/instrument.ts';
import { partNamed, type Settings, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, isAre, list, sayNode } from '../../engine/rules/words.ts';

/** Instruments by the names that engineers give them. */
export const INSTRUMENTS: Readonly<Record<Instrument, string>> = {
  tester: 'Two-pole tester',
  volts: 'Multimeter, volts',
  continuity: 'Continuity',
  ohms: 'Ohms',
};

const WORK = { fires: ['fire', 'fires'], pumps: ['run', 'runs'], heats: ['heat', 'heats'] } as const;

/** A terminal in a sentence: "terminal 6", "three-port valve orange". A name that is no terminal stays as it is. */
export function sayEnd(system: System, terminal: string): string {
  const node = system.nodeOf.get(terminal);
  return node === undefined ? terminal : sayNode(system, node);
}

/** What is landed on a terminal, for strips that are numbered otherwise: "cyl stat CALL, 3-port orange"; empty when nothing is. */
export function landedOn({ parts }: System, wires: readonly Wire[], terminal: string): string {
  const ends = wires.filter((wire) => wire.includes(terminal)).flat();
  return ends
    .filter((end) => end !== terminal)
    .map((end) => {
      const [part, mark] = end.split('/');
      return `${parts.find(({ id }) => id === part)?.short} ${mark}`;
    })
    .join(', ');
}

/** What is asked: "Does the boiler fire?" */
export function sayQuestion(system: System, test: Test): string {
  if (test.kind === 'reads') {
    const [a, b] = test.between.map((end) => sayEnd(system, end));
    return `${INSTRUMENTS[test.instrument]}: ${a} to ${b}`;
  }
  const { name, kind } = partNamed(system, test.part);
  const the = `the ${name.toLowerCase()}`;
  if (test.kind === 'stands') return `Where does ${the} stand?`;
  const does = isAre(name) === 'are' ? 'Do' : 'Does';
  return test.kind === 'warms'
    ? `${does} ${the} get warm?`
    : `${does} ${the} ${WORK[kind.work?.does ?? 'fires'][0]}?`;
}

/** An answer as it stands on a button: "Yes", "Open to the radiators only", "230 V lamp". */
export function sayAnswer(system: System, test: Test, outcome: Outcome): string {
  if (test.kind === 'stands') {
    return capital(system.spec.parts[test.part]?.positions?.[String(outcome)] ?? String(outcome));
  }
  if (test.kind !== 'reads') return outcome === true ? 'Yes' : 'No';
  return capital(sayReading(test.instrument, outcome));
}

/** What an instrument shows: "230 V lamp", "no lamp", "beeps", "open", "2.4 kΩ". */
export function sayReading(instrument: Instrument, outcome: Outcome): string {
  if (instrument === 'tester') return outcome === 0 ? 'no lamp' : `${outcome} V lamp`;
  if (instrument === 'volts') return `${outcome} V`;
  if (instrument === 'continuity') return outcome === true ? 'beeps' : 'silent';
  const ohms = Number(outcome);
  if (ohms === Number.POSITIVE_INFINITY) return 'open';
  if (ohms >= 1e6) return `${round(ohms / 1e6)} MΩ`;
  return ohms >= 1e3 ? `${round(ohms / 1e3)} kΩ` : `${round(ohms)} Ω`;
}

const round = (value: number): number => Number(value.toPrecision(3));

/** What was found, in a sentence: "The boiler does not fire." */
export function sayFind(system: System, { test, outcome }: Observation): string {
  if (test.kind === 'reads') return `${sayQuestion(system, test)}: ${sayReading(test.instrument, outcome)}.`;
  const { name, kind } = partNamed(system, test.part);
  const the = `The ${name.toLowerCase()}`;
  const are = isAre(name);
  if (test.kind === 'stands') return `${the} stands: ${sayAnswer(system, test, outcome).toLowerCase()}.`;
  if (test.kind === 'warms') {
    const does = are === 'are' ? 'do' : 'does';
    return `${the} ${outcome === true ? (are === 'are' ? 'get' : 'gets') : `${does} not get`} warm.`;
  }
  const [verb, verbs] = WORK[kind.work?.does ?? 'fires'];
  return `${the} ${outcome === true ? verbs : `does not ${verb}`}.`;
}

/** Settings in a sentence: "supply on, hot water on, cylinder calling"; those at rest are named when they are few. */
export function saySettings({ inputs }: System, settings: Settings): string {
  const say = (some: typeof inputs) =>
    some.map(({ id, label }) => `${label.toLowerCase()} ${settings[id]}`).join(', ');
  const active = inputs.filter(({ id, settings: [, on] }) => settings[id] === on);
  const resting = inputs.filter(({ id, settings: [rest] }) => settings[id] === rest);
  if (active.length === 0) return 'everything off or satisfied';
  if (resting.length === 0) return say(active);
  return `${say(active)}; ${resting.length <= 4 ? say(resting) : 'the rest off or satisfied'}`;
}

/** What to do to the controls: "Turn heating off and room to calling". */
export function sayChanges(system: System, changes: Settings): string {
  const words = Object.entries(changes).map(([id, setting]) => {
    const label = system.inputs.find((input) => input.id === id)?.label ?? id;
    return setting === 'on' || setting === 'off'
      ? `${label.toLowerCase()} ${setting}`
      : `${label.toLowerCase()} to ${setting}`;
  });
  return words.length === 0 ? '' : `Turn ${list(words)}`;
}

/** "1 fault", "12 faults". */
export const faults = (count: number): string => (count === 1 ? '1 fault' : `${count} faults`);
