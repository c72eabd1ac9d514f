import { failureId, sayFailure } from '../../engine/faults/failure.ts';
import { hazards } from '../../engine/faults/hazards/index.ts';
import { findLayers } from '../../engine/faults/layers.ts';
import { buildSystem } from '../../engine/model/build.ts';
import type { Config, SystemSpec } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { findKind } from '../../engine/parts/index.ts';

/** What the page asks: all smallest sets of at most `most` failures. A newer question stops an older one. */
export interface Question {
  readonly spec: SystemSpec;
  readonly wires: readonly Wire[];
  readonly hazard: string;
  readonly most: number;
}
/** A set of failures by id and in words, and a state in which the hazard is there. */
export interface FoundSet {
  readonly ids: readonly string[];
  readonly says: readonly string[];
  readonly config: Config;
}
export type Answer =
  | { readonly progress: number; readonly size: number }
  | { readonly sets: readonly FoundSet[]; readonly most: number };

const say = (answer: Answer) => postMessage(answer);
/** Lets messages in: a question that has come meanwhile raises `asked`. */
const breathe = () => new Promise((resolve) => setTimeout(resolve));

let asked = 0;
self.onmessage = async ({ data }: MessageEvent<Question>) => {
  const mine = ++asked;
  const system = buildSystem(data.spec, findKind);
  const hazard = hazards.find(({ id }) => id === data.hazard);
  if (!hazard) return;
  const search = findLayers(system, data.wires, hazard, data.most);
  for (let turn = 1; ; turn++) {
    const step = search.next();
    if (step.done) {
      const sets = step.value.map(({ failures, config }) => ({
        ids: failures.map((failure) => failureId(system, failure)),
        says: failures.map((failure) => sayFailure(system, failure)),
        config,
      }));
      say({ sets, most: data.most });
      return;
    }
    if (turn % 4 !== 0) continue;
    say({ progress: step.value.tried / step.value.total, size: step.value.size });
    await breathe();
    if (mine !== asked) return;
  }
};
