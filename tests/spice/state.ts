import { evaluate, type Live } from '../../src/engine/circuit/plain.ts';
import { measure, type Readings } from '../../src/engine/meter/measure.ts';
import {
  type Config,
  partState,
  positionOf,
  type System,
  settingsOf,
} from '../../src/engine/model/system.ts';
import type { Wire } from '../../src/engine/model/wiring.ts';
import { ampsName, netlist, type Options, voltsName } from './netlist.ts';
import { rms, run } from './ngspice.ts';

/** A motor's current as ngspice draws it: RMS amps, and the furthest it swings each way. */
export interface Current {
  readonly rms: number;
  readonly least: number;
  readonly most: number;
}

/** One state seen three ways: the engine's logic, the meter, and ngspice. */
export interface Seen {
  readonly title: string;
  readonly config: Config;
  readonly live: Live;
  readonly meter: Readings;
  /** Volts RMS from each node to the incoming neutral and earth. */
  readonly volts: readonly number[];
  /** Volts RMS between two nodes. */
  readonly between: (a: number, b: number) => number;
  readonly motor: (part: string) => Current;
  /** Largest current out of the source, amps. */
  readonly drawn: number;
  /** Per node: a load's path leads to it from something joined to line, without passing anything joined to neutral. */
  readonly throughLoad: readonly boolean[];
}

/** Simulates one state and asks the engine and the meter about it too. */
export async function see(
  system: System,
  wires: readonly Wire[],
  config: Config,
  options: Options = {},
): Promise<Seen> {
  const { time, wave } = await run(netlist(system, wires, config, options));
  const waves = system.nodes.map((_, k) => wave(voltsName(k)));
  const live = evaluate(system, wires, config);
  const active = system.inputs.filter(
    ({ id, settings }) => settingsOf(system, config.inputs)[id] === settings[1],
  );
  const at = system.movers.map(({ part }) => {
    const mover = system.parts[part];
    return mover ? `${mover.id} at ${positionOf(system, mover, config.place)}` : '';
  });
  return {
    title: `${active.map(({ id, settings }) => `${id} ${settings[1]}`).join(', ') || 'all off'}; ${at.join(', ')}`,
    config,
    live,
    meter: measure(system, wires, config),
    volts: waves.map((one) => rms(time, one)),
    between(a, b) {
      const [from, to] = [waves[a] ?? [], waves[b] ?? []];
      return rms(
        time,
        from.map((volts, k) => volts - (to[k] ?? Number.NaN)),
      );
    },
    motor(part) {
      const amps = wave(ampsName(`${part}/motor`));
      return { rms: rms(time, amps), least: Math.min(...amps), most: Math.max(...amps) };
    },
    drawn: Math.max(...wave('i(vmains)').map(Math.abs)),
    throughLoad: loadPaths(system, wires, config, live),
  };
}

/** Floods from what is joined to line through wires, closed contacts and elements, stopping at what is joined to neutral. */
function loadPaths(system: System, wires: readonly Wire[], config: Config, live: Live): boolean[] {
  const pairs: [number, number][] = wires.map(([a, b]) => [index(system, a), index(system, b)]);
  for (const part of system.parts) {
    const state = partState(system, part, config);
    const node = (end: string) =>
      system.nodeOf.has(`${part.id}/${end}`)
        ? index(system, `${part.id}/${end}`)
        : index(system, `${part.id}/(${end})`);
    const joined = [
      ...(part.kind.contacts ?? []).filter(({ closed }) => closed(state)),
      ...(part.kind.elements ?? []),
    ];
    for (const { between } of joined) pairs.push([node(between[0]), node(between[1])]);
  }
  const reached = [...live.line];
  for (let grew = true; grew; ) {
    grew = false;
    for (const [a, b] of [...pairs, ...pairs.map(([x, y]) => [y, x] as const)]) {
      if (!reached[a] || reached[b] || live.neutral[a]) continue;
      reached[b] = true;
      grew = true;
    }
  }
  return reached.map((yes, k) => yes && !live.neutral[k] && !live.line[k]);
}

export function index(system: System, name: string): number {
  const node = system.nodeOf.get(name);
  if (node === undefined) throw new Error(`no node "${name}"`);
  return node;
}
