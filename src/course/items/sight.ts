import { type Config, partNamed, type System, settingsOf } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { viewState } from '../../engine/rules/view.ts';
import { capital, isAre, list, sayPosition, sayWork } from '../../engine/rules/words.ts';

/** What a person on the job sees of a state without a meter: what runs, what gets warm, how the valves stand. */
export interface Sight {
  /** A sentence each; what two states show is the same when these are. */
  readonly runs: readonly string[];
  readonly warm: string;
  readonly stands: readonly string[];
}

const sentence = (text: string): string => `${capital(text)}.`;

/** Looks at a wired system in one configuration. */
export function see(system: System, wires: readonly Wire[], config: Config): Sight {
  const state = viewState(system, wires, config);
  const runs = system.parts.flatMap(({ kind }, part) =>
    kind.work ? [sentence(sayWork(system, part, state.working(part)))] : [],
  );
  const warm = [
    ...new Set(system.spec.demands.filter(state.heated).map(({ heats }) => partNamed(system, heats).name)),
  ].map((name) => `the ${name.toLowerCase()}`);
  const stands = system.movers.flatMap(({ part }) => {
    const { id, kind } = system.parts[part] ?? {};
    return id !== undefined && kind?.passes ? [sentence(sayPosition(system, id, config))] : [];
  });
  const get = warm.length > 1 || isAre(warm[0] ?? '') === 'are' ? 'get' : 'gets';
  return {
    runs,
    warm: warm.length > 0 ? sentence(`${list(warm)} ${get} heat`) : 'Nothing gets heat.',
    stands,
  };
}

/** All that is seen, as text; without the valves where they are not to be told. */
export const saySight = ({ runs, warm, stands }: Sight, valves = true): string =>
  [...runs, warm, ...(valves ? stands : [])].join(' ');

/** What the first shows and the second does not. */
export const unlike = (one: Sight, other: Sight): readonly string[] =>
  [...one.runs, one.warm, ...one.stands].filter(
    (says) => ![...other.runs, other.warm, ...other.stands].includes(says),
  );

/** Settings in words, all of them: "supply on, hot water off and room calling". */
export function sayInputs(system: System, { inputs }: Pick<Config, 'inputs'>): string {
  const now = settingsOf(system, inputs);
  return list(system.inputs.map(({ id, label }) => `${label.toLowerCase()} ${now[id] ?? ''}`));
}
