import type { System } from '../../model/system.ts';
import { energyCutOut } from '../../parts/cut-out.ts';
import { cylinderThermostat } from '../../parts/thermostats.ts';
import { capital, list } from '../../rules/words.ts';
import { type Failure, sayFailure } from '../failure.ts';
import type { Change } from './controls.ts';
import type { DaySettings } from './settings.ts';

/** `programmer` and `draw` belong to any day; the rest are the story. */
export type EventKind =
  | 'programmer'
  | 'draw'
  | 'thermostat'
  | 'cut-out'
  | 'relief'
  | 'boiler'
  | 'failure'
  | 'fuse'
  | 'uncontrolled';

/** Something that happens in the day, and how a person says it. */
export interface DayEvent {
  readonly seconds: number;
  readonly kind: EventKind;
  readonly says: string;
}

/** What a sound part would do now, or what keeps a failed one from it. */
function orFails(system: System, failures: readonly Failure[], kind: string, does: string): string {
  const failed = failures.find(
    (failure) => 'part' in failure && system.parts[failure.part]?.kind.kind === kind && failure.spec.contacts,
  );
  return failed ? `, but ${sayFailure(system, failed)}.` : `: ${does}.`;
}

/** A control that changes over, as an event without its time. */
export function sayChange(
  system: System,
  failures: readonly Failure[],
  settings: DaySettings,
  change: Change,
): Omit<DayEvent, 'seconds'> {
  const { thermostat, differential, cutOut, reliefOpens, boilerLimit, limitResets } = settings;
  const stat = (does: string) => orFails(system, failures, cylinderThermostat.kind, does);
  switch (change) {
    case 'satisfied': {
      const says = `The store reaches ${thermostat} °C${stat('the cylinder thermostat is satisfied')}`;
      return { kind: 'thermostat', says };
    }
    case 'calls': {
      const says = `The store falls to ${thermostat - differential} °C${stat('the cylinder thermostat calls')}`;
      return { kind: 'thermostat', says };
    }
    case 'trips': {
      const does = orFails(system, failures, energyCutOut.kind, 'the cut-out trips');
      return { kind: 'cut-out', says: `The store reaches ${cutOut} °C${does}` };
    }
    case 'lifts': {
      const says = `The store passes ${reliefOpens} °C: the temperature relief valve lifts and hot water runs to the tundish.`;
      return { kind: 'relief', says };
    }
    case 'reseats':
      return { kind: 'relief', says: 'The temperature relief valve shuts again.' };
    case 'limit': {
      const then = limitResets
        ? 'From here on it comes and goes.'
        : 'It stays off until it is reset by hand.';
      return {
        kind: 'boiler',
        says: `The flow reaches ${boilerLimit} °C: the boiler’s own limit stops it. ${then}`,
      };
    }
    case 'limit resets':
      return { kind: 'boiler', says: 'The boiler’s limit lets it fire again.' };
  }
}

/** The failures as they strike, as one sentence; empty when there are none. */
export function sayStruck(system: System, failures: readonly Failure[], { flowFails }: DaySettings): string {
  const said = failures.map((failure) => sayFailure(system, failure));
  if (flowFails) said.push('the boiler’s own thermostat sticks on');
  return said.length === 0 ? '' : `From now on ${list(said)}.`;
}

export const sayProgrammer = (channel: string, on: boolean): string =>
  `${capital(channel)} goes ${on ? 'on' : 'off'}.`;

export const sayDraw = (litres: number): string => `${litres} litres of hot water are drawn.`;
