import type { Simulation } from 'eecircuit-engine';

/** What one transient run gives: times in seconds, and a wave per saved vector such as `v(n3)` or `i(vm)`. */
export interface Run {
  readonly time: readonly number[];
  readonly wave: (name: string) => readonly number[];
}

let engine: Promise<Simulation> | undefined;
let runs = 0;

/** The simulator, loaded once: it takes over a second. */
function start(): Promise<Simulation> {
  engine ??= import('eecircuit-engine').then(async ({ Simulation }) => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  });
  return engine;
}

/**
 * Runs a netlist (without title and `.end`) in ngspice. A failed run hands back the result of the one before it, so
 * each run has a title of its own and its answer must carry it. Throws an Error that quotes ngspice otherwise.
 */
export async function run(lines: readonly string[]): Promise<Run> {
  const simulation = await start();
  const title = `run ${++runs}`;
  simulation.setNetList([title, ...lines, '.end'].join('\n'));
  const result = await simulation.runSim();
  const complaints = simulation
    .getError()
    .filter((line) => /^\s*(Error|doAnalyses)|aborted|ignored!|singular matrix/.test(line));
  const mine = result.header.split('\n')[0]?.trim() === `Title: ${title}`;
  if (
    complaints.length > 0 ||
    !mine ||
    result.header.includes('Constant values') ||
    result.dataType !== 'real'
  ) {
    throw new Error(`ngspice: ${complaints.join('; ') || result.header}`);
  }
  const { data } = result;
  const wave = (name: string): readonly number[] => {
    const found = data.find((vector) => vector.name === name);
    if (!found) throw new Error(`ngspice saved no "${name}"`);
    return found.values;
  };
  return { time: wave('time'), wave };
}

/** Root of the mean square over the run, by the trapezium rule: the simulator's steps are uneven. */
export function rms(time: readonly number[], wave: readonly number[]): number {
  let sum = 0;
  for (let k = 1; k < time.length; k++) {
    const [before, after] = [wave[k - 1] ?? Number.NaN, wave[k] ?? Number.NaN];
    sum += ((before * before + after * after) / 2) * ((time[k] ?? 0) - (time[k - 1] ?? 0));
  }
  return Math.sqrt(sum / ((time.at(-1) ?? 0) - (time[0] ?? 0)));
}
