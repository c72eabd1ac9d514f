import { type Judge, makeJudge } from '../../engine/grade/judge.ts';
import { isWide } from '../../engine/grade/size.ts';
import type { Config, InputBits, Place, System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { stateRules } from '../../engine/rules/index.ts';
import type { StateRule } from '../../engine/rules/rule.ts';

/** The resting states of a wired system that can be reached, and the rules that each breaks. */
export interface States {
  readonly restsAt: (inputs: InputBits) => readonly Place[];
  /** Every resting state that breaks a rule about states at rest, the gravest rule first. */
  readonly failing: () => readonly { readonly config: Config; readonly rule: StateRule }[];
}

const judges = new WeakMap<System, Judge>();
const known = new WeakMap<System, WeakMap<readonly Wire[], States>>();

function judgeOf(system: System): Judge {
  const judge = judges.get(system) ?? makeJudge(system);
  judges.set(system, judge);
  return judge;
}

/** The states of a wiring, worked out once; undefined for a system with too many of them to hold side by side. */
export function statesOf(system: System, wires: readonly Wire[]): States | undefined {
  if (isWide(system)) return undefined;
  const ofSystem = known.get(system) ?? new WeakMap<readonly Wire[], States>();
  known.set(system, ofSystem);
  const states = ofSystem.get(wires) ?? sweep(system, wires);
  ofSystem.set(wires, states);
  return states;
}

function sweep(system: System, wires: readonly Wire[]): States {
  const { frame, reach, broken } = judgeOf(system).sweepStates(wires);
  const judged = reach.judged.slice();
  const breaks = broken.map((lanes) => lanes.slice());
  const isIn = (lanes: Int32Array, { inputs, place }: Config) =>
    (((lanes[place * frame.blocks + (inputs >> 5)] ?? 0) >>> (inputs & 31)) & 1) === 1;
  const places = Array.from({ length: system.places }, (_, place) => place);
  const restsAt = (inputs: InputBits) => places.filter((place) => isIn(judged, { inputs, place }));
  return {
    restsAt,
    failing: () =>
      stateRules.flatMap((rule, r) => {
        const lanes = breaks[r];
        if (rule.scope !== 'rest' || !lanes?.some((word) => word !== 0)) return [];
        return Array.from({ length: 1 << system.inputs.length }, (_, inputs) => inputs).flatMap((inputs) =>
          restsAt(inputs)
            .map((place) => ({ inputs, place }))
            .filter((config) => isIn(lanes, config))
            .map((config) => ({ config, rule })),
        );
      }),
  };
}
