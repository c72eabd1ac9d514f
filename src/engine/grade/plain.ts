import { configKey, explorePlain } from '../explore/plain.ts';
import type { System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { stateRules } from '../rules/index.ts';
import { viewState } from '../rules/view.ts';

/** What the plain judge finds: the judged states and, per rule about states, the states that break it. */
export interface PlainVerdict {
  readonly judged: ReadonlySet<number>;
  readonly broken: ReadonlyMap<string, ReadonlySet<number>>;
}

/** Judges every state one by one with the rules' own definitions: the oracle of the fast judge. */
export function judgePlain(system: System, wires: readonly Wire[]): PlainVerdict {
  const { met, judged, hunting } = explorePlain(system, wires);
  const broken = new Map(stateRules.map(({ id }) => [id, new Set<number>()]));
  for (const key of met) {
    const config = { inputs: Math.floor(key / system.places), place: key % system.places };
    const state = viewState(system, wires, config);
    for (const rule of stateRules) {
      if (rule.scope === 'rest' && !judged.has(key)) continue;
      if (rule.id === 'no-hunting' && !hunting.has(key)) continue;
      if (rule.broken(state)) broken.get(rule.id)!.add(configKey(system, config));
    }
  }
  return { judged, broken };
}
