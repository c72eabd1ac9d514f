import type { Observation, Outcome, Test } from '../../engine/diagnose/evidence.ts';
import type { Allowed } from '../../engine/diagnose/expert.ts';
import type { Instrument } from '../../engine/diagnose/instrument.ts';
import type { Settings, System } from '../../engine/model/system.ts';
import {
  fitsControls,
  freshMoment,
  freshNote,
  type History,
  type Moment,
  type Note,
  settingsFrom,
  withFind,
} from './note.ts';

/*
 * A visit as the end of a link, readable by eye and by hand:
 * #who=dead&wiring=…&with=supply:on,room:calling&works=boiler:no&tester=strip/6:strip/9:230&with=…
 * `with` begins a moment; what follows it was found in it.
 */

const WHO: readonly Allowed[] = ['looks', 'dead', 'live'];
const HISTORY: readonly History[] = ['worked', 'altered'];
const INSTRUMENTS: readonly Instrument[] = ['tester', 'volts', 'continuity', 'ohms'];

/** What a link says, and what of it could not be read: a sentence each. */
export interface ReadLink {
  readonly note: Note;
  readonly problems: readonly string[];
}

const piece = (text: string): string => encodeURIComponent(text).replace(/%2F/g, '/').replace(/%20/g, '+');
const unpiece = (text: string): string => {
  try {
    return decodeURIComponent(text.replace(/\+/g, ' '));
  } catch {
    return text;
  }
};

/** The end of a link that brings a visit back, with its `#`. */
export function writeLink(system: System, { wiring, who, history, moments }: Note): string {
  const lines = moments.flatMap(({ settings, finds }) => [
    `with=${system.inputs.map(({ id }) => `${piece(id)}:${piece(settings[id] ?? '')}`).join(',')}`,
    ...finds.map(writeFind),
  ]);
  return `#${[`who=${who}`, `history=${history}`, `wiring=${piece(wiring)}`, ...lines].join('&')}`;
}

function writeFind({ test, outcome }: Observation): string {
  const said =
    typeof outcome === 'boolean' ? (outcome ? 'yes' : 'no') : outcome === Infinity ? 'open' : String(outcome);
  const [what, ...names] =
    test.kind === 'reads' ? [test.instrument, ...test.between] : [test.kind, test.part];
  return `${what}=${[...names, said].map(piece).join(':')}`;
}

/**
 * A visit out of the end of a link. What cannot be read is left out and told, so that the rest is not lost; an empty one
 * is a fresh visit.
 * @param wirings ids of the right wirings of the system, at least one
 */
export function readLink(system: System, wirings: readonly string[], hash: string): ReadLink {
  const fresh = freshNote(system, wirings[0] ?? '');
  const problems: string[] = [];
  let { who, history, wiring } = fresh;
  const moments: Moment[] = [];
  for (const line of hash.replace(/^#/, '').split('&').filter(Boolean)) {
    const at = line.indexOf('=');
    const [key, value] = at < 0 ? [line, ''] : [line.slice(0, at), line.slice(at + 1)];
    const said = unpiece(value);
    if (key === 'who') {
      const known = WHO.find((one) => one === said);
      if (known) who = known;
      else problems.push(`The link says who is at work as “${said}”. It can be ${WHO.join(', ')}.`);
    } else if (key === 'history') {
      const known = HISTORY.find((one) => one === said);
      if (known) history = known;
      else problems.push(`The link says the history as “${said}”. It can be ${HISTORY.join(' or ')}.`);
    } else if (key === 'wiring') {
      if (wirings.includes(said)) wiring = said;
      else problems.push(`This system has no drawing “${said}”: the first one is shown.`);
    } else if (key === 'with') {
      moments.push({ settings: readSettings(system, value, problems), finds: [] });
    } else {
      const find = readFind(system, key, value);
      if ('problem' in find) {
        problems.push(find.problem);
        continue;
      }
      const moment = moments.pop() ?? freshMoment(system);
      const fits = fitsControls(system, moment.settings, find.test);
      if (!fits)
        problems.push(`“${unpiece(line)}” does not go with the supply as the link has it: left out.`);
      moments.push(fits ? withFind(moment, find) : moment);
    }
  }
  return { note: { who, history, wiring, moments: moments.length > 0 ? moments : fresh.moments }, problems };
}

function readSettings(system: System, value: string, problems: string[]): Settings {
  const settings: Record<string, string> = {};
  for (const pair of value.split(',').filter(Boolean)) {
    const [id = '', setting = ''] = pair.split(':').map(unpiece);
    const input = system.inputs.find((one) => one.id === id);
    if (!input) problems.push(`This system has no control “${id}”: left out.`);
    else if (!input.settings.includes(setting)) {
      problems.push(`“${input.label}” cannot be “${setting}”: it is ${input.settings.join(' or ')}.`);
    } else settings[id] = setting;
  }
  return settingsFrom(system, settings);
}

function readFind(system: System, key: string, value: string): Observation | { problem: string } {
  const names = value.split(':').map(unpiece);
  const said = names.pop() ?? '';
  const test = readTest(system, key, names);
  if ('problem' in test) return test;
  const outcome = readOutcome(system, test, said);
  if (outcome === undefined)
    return { problem: `“${said}” is no answer to “${key}=${names.join(':')}”: left out.` };
  return { test, outcome };
}

function readTest(system: System, key: string, names: readonly string[]): Test | { problem: string } {
  const instrument = INSTRUMENTS.find((one) => one === key);
  if (instrument) {
    const lost = names.find((name) => (system.nodeOf.get(name) ?? system.terminals) >= system.terminals);
    if (lost !== undefined) return { problem: `This system has no terminal “${lost}”: left out.` };
    const [a, b] = names;
    if (a === undefined || b === undefined || names.length > 2 || a === b) {
      return { problem: `A reading needs two terminals, not “${names.join(':')}”: left out.` };
    }
    return { kind: 'reads', instrument, between: [a, b] };
  }
  if (key !== 'works' && key !== 'warms' && key !== 'stands') {
    return { problem: `“${key}” is nothing that can be found on a visit: left out.` };
  }
  const part = system.parts.find(({ id }) => id === names.join(':'));
  if (!part) return { problem: `This system has no part “${names.join(':')}”: left out.` };
  const fits = {
    works: part.kind.work !== undefined,
    warms: part.kind.heat === 'takes',
    stands: part.mover >= 0,
  };
  return fits[key]
    ? { kind: key, part: part.id }
    : { problem: `“${key}” cannot be asked of the ${part.name.toLowerCase()}: left out.` };
}

function readOutcome(system: System, test: Test, said: string): Outcome | undefined {
  const yesNo = said === 'yes' ? true : said === 'no' ? false : undefined;
  if (test.kind === 'stands') {
    const mover = system.movers[system.parts.find(({ id }) => id === test.part)?.mover ?? -1];
    return mover?.positions.includes(said) ? said : undefined;
  }
  if (test.kind !== 'reads' || test.instrument === 'continuity') return yesNo;
  if (test.instrument === 'ohms' && said === 'open') return Number.POSITIVE_INFINITY;
  return /^\d+(\.\d+)?$/.test(said) ? Number(said) : undefined;
}
