import type { Complaint } from '../../engine/diagnose/callout.ts';
import type { Family } from '../../engine/diagnose/symptom.ts';
import { bitsOf, isCalled, runsOf, type Settings, type System } from '../../engine/model/system.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { makeRandom, type Random } from '../random.ts';
import { saySettings } from './settings-words.ts';

/** How a customer begins, by what it is about. */
const OPENINGS: Readonly<Record<Family, readonly string[]>> = {
  'nothing-works': ['The whole thing is dead.', 'Nothing works here at all.', 'It has all gone quiet.'],
  'no-heat-at-all': ['It makes its noise, and nothing gets warm.', 'It runs, but we get no heat from it.'],
  'no-hot-water': ['We have no hot water.', 'I cannot run a hot bath.', 'The taps run cold.'],
  'no-heating': ['The heating does not come on.', 'We are cold in here.', 'There is no heat in the rooms.'],
  'one-zone-cold': ['Part of the house stays cold.', 'Some of it is warm and some of it is not.'],
  'heat-not-asked-for': ['It gets hot when nobody wants it.', 'I cannot turn the heat off.'],
  'noise-or-waste': ['It runs when it should be resting.', 'I hear it when it should be quiet.'],
};

const CLOSINGS = [
  'Can you come today?',
  'I have not touched anything.',
  'It was fine last week.',
  'My neighbour could not find it either.',
  'I hope it will not cost too much.',
  'There are children in the house.',
  'I work from home, so come when you like.',
] as const;

type Outcome = 'does' | 'does not' | 'does unasked' | 'rests';

/** By what somebody sees or hears of a part: `it` is the part. */
const SAYS: Readonly<Record<'works' | 'warms', Readonly<Record<Outcome, readonly string[]>>>> = {
  works: {
    does: ['I can hear $', '$ comes on'],
    'does not': ['$ does not start', 'I hear nothing from $', '$ stays quiet'],
    'does unasked': ['$ runs all the same', '$ comes on without being asked'],
    rests: ['$ rests, as it should', '$ is quiet, as it should be'],
  },
  warms: {
    does: ['$ get$s warm', '$ get$s hot'],
    'does not': ['$ stay$s cold', '$ never get$s warm', '$ will not get warm'],
    'does unasked': ['$ get$s hot all the same', '$ get$s warm without being asked'],
    rests: ['$ stay$s cool, as it should be', '$ get$s no heat, as it should be'],
  },
};

const BUSY = ['When', 'Whenever', 'If'] as const;

/** Whether these settings ask for a part's heat, or for its work. */
function isAsked(system: System, part: string, kind: 'works' | 'warms', settings: Settings): boolean {
  const bits = bitsOf(system, settings);
  return system.spec.demands
    .filter((demand) => isCalled(system, bits, demand))
    .some((demand) =>
      kind === 'warms'
        ? demand.heats === part
        : [...runsOf(system, demand), ...(demand.may ?? [])].includes(part),
    );
}

function sayComplaint(system: System, { test, outcome, settings }: Complaint, { pick }: Random): string {
  if (test.kind !== 'works' && test.kind !== 'warms')
    throw new RangeError(`expected what a customer can see or feel, found "${test.kind}"`);
  const asked = isAsked(system, test.part, test.kind, settings);
  const how: Outcome = outcome === true ? (asked ? 'does' : 'does unasked') : asked ? 'does not' : 'rests';
  const { name, many } = thing(system, test.part);
  return pick(SAYS[test.kind][how])
    .replaceAll('$s', many ? '' : 's')
    .replace('$', name)
    .replace('as it should be', many ? 'as they should' : 'as it should');
}

/** Where a fault shows one way at one time and another at the next, somebody says just that. */
function sayOne(system: System, one: Complaint, all: readonly Complaint[], random: Random): string {
  const same = ({ test }: Complaint) => JSON.stringify(test) === JSON.stringify(one.test);
  const varies = all.some((other) => same(other) && other.outcome !== one.outcome);
  if (!varies || !('part' in one.test)) return sayComplaint(system, one, random);
  const { name, many } = thing(system, one.test.part);
  const [does, not] = one.test.kind === 'works' ? ['run', 'rest'] : ['get warm', 'stay cold'];
  return many
    ? `${name} ${does} one time and ${not} the next`
    : `${name} will ${does} one time and ${not} the next`;
}

/** What a customer calls a part, and whether it is many. */
function thing(system: System, id: string): { readonly name: string; readonly many: boolean } {
  const part = system.parts.find((one) => one.id === id);
  if (!part) throw new RangeError(`expected a part of the system, found "${id}"`);
  const kind = part.kind.kind;
  const name = part.name.toLowerCase();
  if (kind === 'cylinder-coil')
    return {
      name: name.startsWith('solar') ? 'the sun’s end of the tank' : 'the water in the tank',
      many: false,
    };
  return { name: `the ${name}`, many: kind === 'radiators' && /s$/.test(name) };
}

/**
 * What the customer says of a callout that was made by a seed, in plain words. The same seed gives the same words.
 * @param callout its family and what was noticed; looks alone, no readings
 * @throws RangeError for a complaint that takes more than eyes and ears, or about a part that is not there
 */
export function customerWords(
  system: System,
  { family, complaints }: { readonly family: Family; readonly complaints: readonly Complaint[] },
  seed: number,
): string {
  const random = makeRandom(seed);
  const said = Map.groupBy(complaints, ({ settings }) => whenWords(system, settings));
  const sentences = [...said].map(([when, own]) => {
    const what = list([...new Set(own.map((one) => sayOne(system, one, own, random)))]);
    return when === '' ? `With everything turned off, ${what}.` : `${random.pick(BUSY)} ${when}, ${what}.`;
  });
  return [random.pick(OPENINGS[family]), ...sentences, random.pick(CLOSINGS)].join(' ');
}

const whenWords = (system: System, settings: Settings): string => list(saySettings(system, settings));

/** How the system is set when somebody comes to the door: “The heating is on and the room thermostat is turned up.” */
export function foundWords(system: System, found: Settings): string {
  const said = whenWords(system, found);
  return said === '' ? 'Everything is turned off when you come in.' : `${capital(said)}.`;
}
