import { Simulation } from 'eecircuit-engine';
import { makeJudge } from '../src/engine/grade/judge.ts';
import { stateTable } from '../src/engine/grade/table.ts';
import { netlist, voltsName } from '../tests/spice/netlist.ts';
import { rms } from '../tests/spice/ngspice.ts';
import { atLeast, type Section, sayTime } from './figure.ts';
import type { Material } from './material.ts';
import { type Effort, median, processorTime, timeAll } from './stopwatch.ts';

/** The same netlist with the mains at its peak and standing still: the least that ngspice can be asked. */
const standing = (lines: readonly string[]): string[] =>
  lines.map((line) => line.replace(/sin\(0 (\S+) 50\)/, 'dc $1').replace(/^\.tran.*/, '.op'));

/**
 * One state in the engine (its share of judging the whole wiring) against one run of ngspice on the same wiring in
 * one state. Loading and starting ngspice is left out.
 */
export async function compareNgspice({ system, reference }: Material, effort: Effort): Promise<Section> {
  const { wires } = reference;
  const judge = makeJudge(system);
  const rows = stateTable(system, wires, judge);
  const engine = timeAll({ judge: () => judge.sweepStates(wires).reach.judged[0] ?? 0 }, effort).judge;
  const state = engine / rows.length;

  const simulation = new Simulation();
  await simulation.start();
  let runs = 0;
  const time = async (lines: readonly string[]): Promise<number> => {
    const title = `state ${++runs}`;
    const start = process.cpuUsage();
    simulation.setNetList([title, ...lines, '.end'].join('\n'));
    const { data, header, dataType } = await simulation.runSim();
    const wave = (name: string) =>
      data.find((vector) => vector.name === name)?.values as number[] | undefined;
    const [volts, times] = [wave(voltsName(system.supply.line)), wave('time')];
    const reading = volts && (times ? rms(times, volts) : (volts[0] ?? 0) / Math.SQRT2);
    const spent = processorTime(start);
    // A failed run hands back the answer of the one before it, under that one's title.
    if (dataType !== 'real' || !header.startsWith(`Title: ${title}`) || Math.abs((reading ?? 0) - 230) > 1)
      throw new Error(`ngspice failed: ${header} ${simulation.getError().join(' ')}`);
    return spent;
  };
  const runAll = async (change: (lines: string[]) => string[]): Promise<number> => {
    const taken: number[] = [];
    const count = effort.smoke ? 1 : 20;
    for (let k = 0; k <= count; k++) {
      const config = rows[Math.floor((k * (rows.length - 1)) / count)]?.config ?? { inputs: 0, place: 0 };
      const ns = await time(change(netlist(system, wires, config)));
      // The first run is the warm-up.
      if (k > 0) taken.push(ns);
    }
    return median(taken);
  };
  const transient = await runAll((lines) => lines);
  const point = await runAll(standing);
  return {
    title: 'The engine against ngspice, a state (ngspice already loaded and started)',
    figures: [
      atLeast('RMS volts from two cycles of 50 Hz', transient / state, 10_000),
      { what: 'one operating point only', value: `${Math.round(point / state).toLocaleString('en-GB')} ×` },
      { what: `judged state, engine (${rows.length} states)`, value: sayTime(state) },
      { what: 'run of ngspice, two cycles', value: sayTime(transient) },
      { what: 'run of ngspice, operating point', value: sayTime(point) },
    ],
  };
}
