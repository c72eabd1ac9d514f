import { evaluate } from '../../engine/circuit/plain.ts';
import { routeBetween, terminalsOf } from '../../engine/circuit/trace.ts';
import type { Act } from '../../engine/diagnose/act.ts';
import type { Bench } from '../../engine/diagnose/bench.ts';
import type { Callout } from '../../engine/diagnose/callout.ts';
import { candidateOf } from '../../engine/diagnose/candidate.ts';
import { partDoes } from '../../engine/diagnose/look.ts';
import { replay, standOf } from '../../engine/diagnose/replay.ts';
import type { Config, Load } from '../../engine/model/system.ts';

/** The way that live should take to a part which ought to work now, and how far it gets. */
export interface LivePath {
  /** Id of the part. */
  readonly to: string;
  /** Terminals from the supply on, and whether each is live in the faulty system now. */
  readonly steps: readonly { readonly terminal: string; readonly live: boolean }[];
  /** Number of the first step that is dead; undefined when live gets all the way. */
  readonly stops: number | undefined;
}

/** Acts that ask and change nothing. */
const asks = ({ do: kind }: Act): boolean => kind === 'test' || kind === 'dead-test';

/**
 * The ways of live to every part that would work now if nothing were wrong, the longest first: played on the healthy
 * system from the same acts. `live` says which terminals are live in the faulty one. Nothing while nothing should work.
 */
export function livePaths(
  bench: Bench,
  callout: Callout,
  acts: readonly Act[],
  live: ReadonlyMap<string, boolean>,
): LivePath[] {
  const { system, wires } = callout;
  const healthy = { ...callout, fault: candidateOf(system, []) };
  const visit = replay(
    bench,
    healthy,
    acts.filter((act) => !asks(act)),
  );
  const stand = standOf(visit);
  const { place, works } = stand;
  const config: Config = { inputs: visit.setup.inputs, place };
  const { line } = evaluate(system, wires, config);
  const nodesTo = ({ a, b, spec }: Load): readonly number[] => {
    const end = line[a] ? a : b;
    // A volt-free pair is fed by the part itself: its way goes out at one end and comes back at the other.
    const from = spec.ownLoop ? (end === a ? b : a) : system.supply.line;
    return routeBetween(system, wires, config, from, end) ?? [];
  };
  const paths = system.parts.flatMap(({ id, kind, mover }, part): LivePath[] => {
    if (kind.work ? !partDoes(stand, part) : mover < 0) return [];
    const ways = system.loads.flatMap((load, k) =>
      load.part === part && works[k] === 1 && !load.spec.optional ? [terminalsOf(system, nodesTo(load))] : [],
    );
    const longest = ways.sort((x, y) => y.length - x.length)[0];
    if (!longest || longest.length === 0) return [];
    const steps = longest.map((terminal) => ({ terminal, live: live.get(terminal) === true }));
    const stops = steps.findIndex((step) => !step.live);
    return [{ to: id, steps, stops: stops < 0 ? undefined : stops }];
  });
  return paths.sort((x, y) => y.steps.length - x.steps.length);
}
