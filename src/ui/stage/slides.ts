import {
  callSettings,
  playStage,
  type StageScript,
  type StageStep,
  type StageView,
} from '../../course/stage.ts';
import type { Config, Demand, System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { followLive, type Journey } from '../drawings/follow.ts';
import { inSentence } from '../drawings/say.ts';

/** One picture of a show: a state, what is said of it, and where the live has got to when it is followed. */
export interface Slide {
  /** The system with what has failed in it. */
  readonly system: System;
  readonly config: Config;
  readonly says: string;
  readonly views: readonly StageView[];
  /** Parts and terminals in the spotlight. */
  readonly spot: readonly string[];
  /** What has failed, in words; empty when nothing has. */
  readonly failed: string;
  /** The walk that the slide is a step of. */
  readonly walk?: { readonly journey: Journey; readonly step: number };
}

/** What has failed, as a sentence: "Two-port valve: stuck open." */
function sayFailed(system: System, failures: readonly string[]): string {
  const said = failures.map((failure) => {
    const [id, name] = failure.split('/');
    const part = system.parts.find((one) => one.id === id);
    const spec = part?.kind.failures?.find((one) => one.id === name);
    return part && spec ? `the ${inSentence(part.name)} ${spec.says}` : failure;
  });
  return said.length > 0 ? `${capital(list(said))}.` : '';
}

/**
 * Every slide of a script, in order: one for each step, and after a step that follows a call one for each step of the live.
 * @throws UnknownName for a name that the system does not have
 */
export function slidesOf(
  system: System,
  wires: readonly Wire[],
  script: Pick<StageScript, 'steps' | 'view'>,
): Slide[] {
  return playStage(system, wires, script).flatMap((state, k): Slide[] => {
    const { says, spot = [] } = script.steps[k] as StageStep;
    const { config } = state;
    const failed = sayFailed(system, state.failures);
    const slide: Slide = { system: state.system, config, says, views: state.view, spot, failed };
    if (!state.follow) return [slide];
    const journey = followLive(state.system, wires, state.follow, config);
    const steps = journey.steps.map(
      (at, step): Slide => ({ ...slide, spot: [], says: at.says, walk: { journey, step } }),
    );
    return [slide, ...steps];
  });
}

/** A walk along the live of a call, with no script at all: from cold, the call, the live, and what comes of it. */
export function walkScript(
  system: System,
  demand: Demand,
  view: readonly StageView[],
): Pick<StageScript, 'steps' | 'view'> {
  const set = Object.entries(callSettings(system, demand)).map(([id, setting]) => {
    const input = system.inputs.find((one) => one.id === id);
    return `${(input?.label ?? id).toLowerCase()} ${setting}`;
  });
  return {
    view,
    steps: [
      { says: 'Cold: nothing is switched on, and every valve rests.' },
      { says: `${capital(demand.says)} is called: ${list(set)}.`, follow: demand.id },
    ],
  };
}
