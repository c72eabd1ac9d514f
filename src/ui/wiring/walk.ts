import type { Found } from '../../engine/grade/verdict.ts';
import type { Config, System } from '../../engine/model/system.ts';
import { settingsOf } from '../../engine/model/system.ts';
import { capital, list, sayPosition } from '../../engine/rules/words.ts';

/** One picture of the walk from cold to a failing state. */
export interface Frame {
  readonly config: Config;
  readonly says: string;
}

/** The walk to a finding's state: a frame for each switch move and for each valve that moves, one after the other. */
export function framesOf(system: System, { way, config }: Pick<Found, 'way' | 'config'>): Frame[] {
  const frames: Frame[] = [];
  way.forEach(({ inputs, places }, k) => {
    const before = way[k - 1];
    const start = { inputs, place: places[0] ?? 0 };
    frames.push({
      config: start,
      says: before ? sayChange(system, before.inputs, inputs) : 'Cold: everything is off.',
    });
    places.slice(1).forEach((place, p) => {
      frames.push({ config: { inputs, place }, says: sayMove(system, places[p]!, { inputs, place }) });
    });
  });
  if (frames.length === 0) frames.push({ config, says: 'Cold: everything is off.' });
  return frames;
}

function sayChange(system: System, before: number, after: number): string {
  const now = settingsOf(system, after);
  const changed = system.inputs.filter((_, k) => ((before ^ after) >> k) & 1);
  return `${capital(list(changed.map(({ id, label }, k) => `${k === 0 ? label : label.toLowerCase()} ${now[id]}`)))}.`;
}

function sayMove(system: System, before: number, config: Config): string {
  const moved = system.movers.find(
    ({ stride, positions }) =>
      Math.floor(before / stride) % positions.length !== Math.floor(config.place / stride) % positions.length,
  );
  return moved ? `${capital(sayPosition(system, system.parts[moved.part]!.id, config))}.` : '';
}
