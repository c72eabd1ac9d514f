import type { Demand, System } from '../model/system.ts';

/** One question in the order they are asked: how an input is set, or where a mover stands. */
export type Question = { readonly input: number } | { readonly mover: number };

/**
 * The order in which diagrams ask about a system. They stay small when a valve is asked about right after the inputs
 * that call for it: then each zone is a piece of its own. So: the supplies first, since everything hangs on them; then
 * for each valve the inputs that call whatever it serves, and the valve; then all the rest. A valve serves the demands
 * that name it, or heat what stands nearest to it in the pipes.
 * Any order gives the same answers.
 */
export function orderQuestions(system: System): Question[] {
  const { spec, inputs, movers, supplies, parts } = system;
  const served = spec.demands.map((demand) => ({
    callers: inputsOf(system, demand),
    valves: valvesOf(system, demand),
  }));
  const zones = served
    .flatMap(({ valves }) => valves)
    .flatMap((mover): Question[] => [
      ...served.filter(({ valves }) => valves.includes(mover)).flatMap(({ callers }) => callers.map(asInput)),
      { mover },
    ]);
  // A mover that no demand leads to, like a relay, follows the inputs of its own part.
  const others = movers.flatMap(({ part }, mover): Question[] => [
    ...Object.values(parts[part]!.slots).map(asInput),
    { mover },
  ]);
  const switches = supplies.filter(({ input }) => input >= 0).map(({ input }) => asInput(input));
  const all = [...switches, ...zones, ...others, ...inputs.map((_, input) => asInput(input))];
  return [...new Map(all.map((question) => [JSON.stringify(question), question])).values()];
}

const asInput = (input: number): Question => ({ input });

function inputsOf({ inputs }: System, { when, slack }: Demand): number[] {
  const named = new Set([...[when].flat(), ...[slack ?? {}].flat()].flatMap((set) => Object.keys(set)));
  return inputs.flatMap(({ id }, input) => (named.has(id) ? [input] : []));
}

/** The demand's own valve, or those fewest pipes away from what it heats. */
function valvesOf({ spec, parts, movers }: System, { valve, heats }: Demand): number[] {
  const moverOf = (id: string): number => parts.find((part) => part.id === id)?.mover ?? -1;
  if (valve !== undefined) return [moverOf(valve)];
  const joined = spec.pipes.map((pipe) => pipe.map((end) => end.slice(0, end.lastIndexOf('/'))));
  const seen = new Set([heats]);
  for (let here = [heats]; here.length > 0; ) {
    const next = here.flatMap((id) => joined.filter((pipe) => pipe.includes(id)).flat());
    here = [...new Set(next)].filter((id) => !seen.has(id));
    for (const id of here) seen.add(id);
    const found = here.map(moverOf).filter((mover) => movers[mover]);
    if (found.length > 0) return found;
  }
  return [];
}
