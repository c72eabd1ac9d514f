import { runsOf, type System } from '../model/system.ts';
import { openWays } from '../plant/paths.ts';
import type { Stand } from './world.ts';

/** The number of a part. Throws an Error when the system has no such part. */
export function partNumber({ parts }: System, id: string): number {
  const part = parts.findIndex((one) => one.id === id);
  if (part < 0) throw new Error(`no part "${id}"`);
  return part;
}

/** Whether a part does its work: every load that it needs is working. */
export function partDoes({ system, works }: Stand, part: number): boolean {
  const { work } = system.parts[part]!.kind;
  const on = (need: string) =>
    system.loads.some((load, l) => load.part === part && load.spec.id === need && works[l] === 1);
  return work?.needs.every((need) => (typeof need === 'string' ? on(need) : need.some(on))) ?? false;
}

/**
 * Whether what takes heat gets warm, wherever the system stands: a heat source works, the way from it is open, and the
 * pumps run that this demand asks for (a gravity circuit asks for none). A source with no work of its own, a store, is
 * taken as hot: it was charged before anybody came.
 */
export function warmth(system: System, taker: string): (stand: Stand) => boolean {
  partNumber(system, taker);
  const demand = system.spec.demands.find(({ heats }) => heats === taker);
  const numbers = new Map(system.parts.map(({ id }, part) => [id, part]));
  const pumps = (demand ? runsOf(system, demand) : [])
    .map((id) => partNumber(system, id))
    .filter((part) => system.parts[part]!.kind.work?.does === 'pumps');
  return (stand) => {
    if (!pumps.every((part) => partDoes(stand, part))) return false;
    for (const [source, ways] of openWays(stand.pipework, stand.place)) {
      const part = numbers.get(source)!;
      if (ways.has(taker) && (!system.parts[part]!.kind.work || partDoes(stand, part))) return true;
    }
    return false;
  };
}
