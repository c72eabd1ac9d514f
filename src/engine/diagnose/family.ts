import { bitsOf, isCalled, type Settings, type System } from '../model/system.ts';
import type { Complaint } from './callout.ts';
import type { Test } from './evidence.ts';

type Look = Exclude<Test, { readonly kind: 'reads' }>;

/** Kinds of complaint. A closed list: each has its title below. */
export type Family =
  | 'nothing-works'
  | 'no-heat-at-all'
  | 'no-hot-water'
  | 'no-heating'
  | 'one-zone-cold'
  | 'heat-not-asked-for'
  | 'noise-or-waste';

/** What is wrong, as a customer might head a letter. */
export const families: Readonly<Record<Family, string>> = {
  'nothing-works': 'Nothing works',
  'no-heat-at-all': 'It runs, but nothing gets warm',
  'no-hot-water': 'No hot water',
  'no-heating': 'No heating',
  'one-zone-cold': 'One zone stays cold',
  'heat-not-asked-for': 'Heat that nobody asked for',
  'noise-or-waste': 'It runs when it should rest',
};

/** Whether what takes heat is for hot water: the coil or the immersion heater of a store. */
const forWater = ({ parts, spec }: System, id: string): boolean =>
  parts.some(
    (part) => part.id === id && (part.kind.heat === 'warms' || part.kind.kind === 'cylinder-coil'),
  ) || (spec.stores ?? []).some(({ heatSources }) => heatSources.some(({ part }) => part === id));

/** Ids of the parts that the calls under some settings should warm. */
const calledIn = (system: System, settings: Settings): string[] =>
  system.spec.demands
    .filter((demand) => isCalled(system, bitsOf(system, settings), demand))
    .map(({ heats }) => heats);

/** Whether a look is about heat, and not only about what runs: an immersion heater that works warms. */
export const isHeat = ({ spec }: System, { kind, part }: Look): boolean =>
  kind === 'warms' || spec.demands.some(({ heats }) => heats === part);

/** Whether what a look is about is asked for under some settings: heat for that part; of a boiler or pump, any heat. */
export function isAskedFor(system: System, settings: Settings, look: Look): boolean {
  const called = calledIn(system, settings);
  return isHeat(system, look) ? called.includes(look.part) : called.length > 0;
}

/** The family of a callout, from its complaints alone: the first that is not as it should be leads. */
export function familyOf({
  system,
  complaints,
}: {
  readonly system: System;
  readonly complaints: readonly Complaint[];
}): Family {
  const cold = new Set<string>();
  let lead: 'cold' | 'hot' | 'runs' | undefined;
  for (const { test, settings, outcome } of complaints) {
    // A customer reads no meter.
    if (test.kind === 'reads' || isAskedFor(system, settings, test) === outcome) continue;
    const heat = isHeat(system, test);
    if (outcome === true) lead ??= heat ? 'hot' : 'runs';
    else {
      lead ??= 'cold';
      // What should run for them and does not leaves them all cold.
      for (const id of heat ? [test.part] : calledIn(system, settings)) cold.add(id);
    }
  }
  if (lead === 'hot') return 'heat-not-asked-for';
  if (lead !== 'cold') return 'noise-or-waste';
  const takers = new Set(system.spec.demands.map(({ heats }) => heats));
  const zones = [...takers].filter((id) => !forWater(system, id));
  const coldWater = [...cold].some((id) => forWater(system, id));
  const coldZones = zones.filter((id) => cold.has(id));
  if (coldWater && coldZones.length > 0) return runsAtAll(complaints) ? 'no-heat-at-all' : 'nothing-works';
  if (coldWater) return 'no-hot-water';
  return zones.length > 1 && coldZones.length === 1 ? 'one-zone-cold' : 'no-heating';
}

/** Whether anything is said to run or to get warm. */
const runsAtAll = (complaints: readonly Complaint[]): boolean =>
  complaints.some(({ outcome }) => outcome === true);
