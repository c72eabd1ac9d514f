import type { Observation } from '../../engine/diagnose/evidence.ts';
import {
  alternatives,
  type Demand,
  partNamed,
  type Settings,
  type System,
} from '../../engine/model/system.ts';
import { capital, isAre } from '../../engine/rules/words.ts';
import { settingsFrom } from './note.ts';

/** What customers complain of, as the first things to enter. */
export interface Symptom {
  readonly id: string;
  /** "No hot water". */
  readonly says: string;
  /** How the controls stand when people complain of it: to be checked on site. */
  readonly settings: Settings;
  readonly finds: readonly Observation[];
}

const calling = (demands: readonly Demand[]): Settings =>
  Object.assign({}, ...demands.map(({ when }) => alternatives(when)[0]));

/** With many zones the same complaint of each would bury the others. */
const MOST_HOT = 2;

/** The complaints that are common on a system, by who calls for what (common practice). */
export function symptomsOf(system: System): Symptom[] {
  const { spec, parts, supplies, inputs } = system;
  const supplied = Object.fromEntries(
    supplies.flatMap(({ input }) => (inputs[input] ? [[inputs[input].id, inputs[input].settings[1]]] : [])),
  );
  const at = (demands: readonly Demand[]) => settingsFrom(system, { ...supplied, ...calling(demands) });
  const working = parts.filter(({ kind }) => kind.work).map(({ id }) => id);
  const works = (part: string, outcome: boolean): Observation => ({ test: { kind: 'works', part }, outcome });
  const warms = (part: string, outcome: boolean): Observation => ({ test: { kind: 'warms', part }, outcome });
  const warmed = spec.demands.filter(({ heats }) => partNamed(system, heats).kind.heat === 'takes');
  const cold = warmed.map((demand) => ({
    id: `cold-${demand.id}`,
    says: `No ${demand.says}`,
    settings: at([demand]),
    finds: [warms(demand.heats, false)],
  }));
  const hot = warmed.flatMap((demand) => {
    const other = warmed.find(({ id, heats }) => id !== demand.id && heats !== demand.heats);
    if (!demand.coldWhenNotCalled && !demand.valve) return [];
    const name = partNamed(system, demand.heats).short;
    return other
      ? [
          {
            id: `uncalled-${demand.id}`,
            says: `${capital(name.toLowerCase())} ${isAre(name) === 'are' ? 'get' : 'gets'} hot with only ${other.says} on`,
            settings: at([other]),
            finds: [warms(demand.heats, true)],
          },
        ]
      : [];
  });
  const sources = parts.filter(({ kind }) => kind.work && kind.heat === 'gives').map(({ id }) => id);
  return [
    ...cold,
    {
      id: 'nothing',
      says: 'Nothing works',
      settings: at(spec.demands),
      finds: working.map((part) => works(part, false)),
    },
    ...sources.slice(0, 1).map((part) => ({
      id: 'never-stops',
      says: `${capital(partNamed(system, part).name.toLowerCase())} never stops`,
      settings: at([]),
      finds: [works(part, true)],
    })),
    ...hot.slice(0, MOST_HOT),
  ];
}
