import { directions, evaluate, type Live, partsAtWork } from '../../engine/circuit/plain.ts';
import type { Config, System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { inSentence, sayPart } from '../drawings/say.ts';
import { sayMoving } from '../wiring/say.ts';
import { readWays } from './ways.ts';

const does = { fires: 'fires', pumps: 'runs', heats: 'heats' } as const;

/** Which ways of the strip are live, in words. */
export function sayStrip(system: System, wires: readonly Wire[], live: Live): string {
  const lit = readWays(system, wires).ways.filter(({ node }) => live.line[node]);
  return lit.length > 0
    ? `Live on the strip: ${list(lit.map(({ mark }) => mark))}.`
    : 'Nothing on the strip is live.';
}

/** A state in words: what is live on the strip, what works, where the valves stand and which way they move. */
export function sayState(system: System, wires: readonly Wire[], config: Config): string {
  const live = evaluate(system, wires, config);
  const working = partsAtWork(system, live);
  const work = system.parts.flatMap(({ id, name, kind }) =>
    kind.work && working.has(id) ? [`the ${inSentence(name)} ${does[kind.work.does]}`] : [],
  );
  const stand = system.parts
    .filter(({ mover, kind }) => mover >= 0 && kind.ports && !kind.work)
    .map((part) => `the ${inSentence(part.name)} is ${sayPart(system, part, config, working)}`);
  const moving = sayMoving(system, directions(system, live, config.place));
  return [
    sayStrip(system, wires, live),
    `${capital(list(work) || 'nothing is running')}.`,
    stand.length > 0 ? `${capital(list(stand))}.` : '',
    moving,
  ]
    .filter((says) => says !== '')
    .join(' ');
}

/** The settings in words: "supply on, heating off". */
export const saySettings = (system: System, { inputs }: Config): string =>
  list(
    system.inputs.map(({ label, settings }, k) => `${label.toLowerCase()} ${settings[(inputs >> k) & 1]}`),
  );
