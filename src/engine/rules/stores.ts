import type { HeatSource, Relief, Store, SystemSpec } from '../model/system.ts';
import { findKind } from '../parts/index.ts';
import { list } from './words.ts';

/** What a system's stores lack, whatever the wiring. */
export interface StoreTrouble {
  readonly rule: string;
  readonly says: string;
  /** Where the rule comes from, with the edition. */
  readonly source: string;
}

/** A rule about a store as it is fitted. `broken` says what is wrong, if anything. */
interface StoreRule {
  readonly rule: string;
  readonly source: string;
  readonly broken: (store: Store, spec: SystemSpec) => string | undefined;
}

const EDITION = 'Approved Document G, 2015 edition with 2016 amendments';
/** Up to so many litres a heater's own safety devices are enough (3.19). */
const SMALL_LITRES = 15;
const ENOUGH_DEVICES = 2;

/** Valves that open on heat. An expansion valve minds the pressure alone, so it is not one of the two devices. */
const onHeat = (relief: readonly Relief[]) => relief.filter((valve) => valve !== 'expansion');

/** Cut-outs of a source that stay off until reset by hand and are not its thermostat under another name. */
function ownCutOuts({ thermostat, cutOuts }: HeatSource, { parts }: SystemSpec): string[] {
  const trips = new Set(
    Object.values(parts).flatMap(({ kind, options, inputs }) =>
      // What is `tripped` stays so until it is reset by hand; a limit that resets itself is `too hot`.
      (findKind(kind, options ?? {})?.inputs ?? [])
        .filter(({ settings }) => settings[1] === 'tripped')
        .map(({ slot }) => inputs?.[slot] ?? slot),
    ),
  );
  return [...new Set(cutOuts)].filter((input) => trips.has(input) && input !== thermostat);
}

const sources = (found: readonly HeatSource[]) => list(found.map(({ part }) => part));

const rules: readonly StoreRule[] = [
  {
    rule: 'two-safety-devices',
    source: `${EDITION}, 3.17 and 3.18`,
    broken({ says, heatSources, relief }, spec) {
      const short = heatSources.filter(
        (source) => ownCutOuts(source, spec).length + onHeat(relief).length < ENOUGH_DEVICES,
      );
      return short.length > 0
        ? `heat from ${sources(short)} meets fewer than two safety devices of the ${says}, the thermostat not counted`
        : undefined;
    },
  },
  {
    rule: 'thermostat-besides',
    source: `${EDITION}, 3.17`,
    broken({ heatSources }) {
      const bare = heatSources.filter(({ thermostat }) => thermostat === undefined);
      return bare.length > 0 ? `heat from ${sources(bare)} has no thermostat` : undefined;
    },
  },
  {
    rule: 'own-cut-out',
    source: `${EDITION}, 3.32 and 3.33`,
    broken({ heatSources }, spec) {
      const bare = heatSources.filter((source) => {
        const others = heatSources.filter((other) => other !== source).flatMap(({ cutOuts }) => cutOuts);
        return ownCutOuts(source, spec).every((input) => others.includes(input));
      });
      return bare.length > 0
        ? `heat from ${sources(bare)} has no cut-out of its own that is reset by hand`
        : undefined;
    },
  },
  {
    rule: 'valve-for-the-cut-out',
    source: `${EDITION}, 3.28, 3.30 and 3.31`,
    broken({ heatSources }, { demands }) {
      const unshut = heatSources.filter(({ part }) =>
        demands.some(({ heats, valve }) => heats === part && valve === undefined),
      );
      return unshut.length > 0 ? `no valve is named that shuts off ${sources(unshut)}` : undefined;
    },
  },
  {
    rule: 'own-valve',
    source: `${EDITION}, 3.32`,
    broken({ heatSources }, { demands }) {
      const valveOf = ({ part }: HeatSource) => demands.find(({ heats }) => heats === part)?.valve;
      const shared = heatSources.filter(
        (source) =>
          valveOf(source) !== undefined &&
          heatSources.some((other) => other !== source && valveOf(other) === valveOf(source)),
      );
      return shared.length > 0
        ? `heat from ${sources(shared)} is shut off by one and the same valve`
        : undefined;
    },
  },
  {
    rule: 'relief-needs-refill',
    source: `${EDITION}, 3.35`,
    broken: ({ says, refill, relief }) =>
      refill === 'none' && onHeat(relief).length > 0
        ? `the ${says} is not refilled by itself, yet has a relief valve that opens on heat`
        : undefined,
  },
];

/**
 * What the stores of a system lack by the rules for unvented hot water storage. A vented store has its vent pipe and
 * other rules (3.12 and 3.13); none of those is about wiring.
 */
export const checkStores = (spec: SystemSpec): StoreTrouble[] =>
  (spec.stores ?? [])
    .filter(({ unvented, litres = Number.POSITIVE_INFINITY }) => unvented && litres > SMALL_LITRES)
    .flatMap((store) =>
      rules.flatMap(({ rule, source, broken }) => {
        const says = broken(store, spec);
        return says === undefined ? [] : [{ rule, says, source }];
      }),
    );
