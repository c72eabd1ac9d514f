import { expect, test } from 'vitest';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { explorePlain } from '../../../src/engine/explore/plain.ts';
import { makeJudge } from '../../../src/engine/grade/judge.ts';
import { measure } from '../../../src/engine/meter/measure.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { randomFrom } from '../../spice/wirings.ts';
import { must } from '../support/must.ts';
import { reference, system } from './system.ts';

/** Wirings tried, and how many the judge must accept of them for the test to mean something. */
const TRIES = 2000;
const LEAST_ACCEPTED = 10;
/** A load the engine calls idle gets less than a tenth of the supply, 23 V. */
const IDLE_VOLTS = 23;
const LIVE_VOLTS = 216;

/** The reference with one wire pulled out, moved, or added, once or twice. */
function edited(random: () => number): Wire[] {
  const pick = (count: number) => Math.floor(random() * count);
  const terminal = () => system.nodes[pick(system.terminals)] ?? '';
  const wires = [...reference];
  for (let edits = 1 + pick(2); edits > 0; edits--) {
    const k = pick(wires.length);
    const [kept = ''] = wires[k] ?? [];
    const added: Wire[][] = [[], [[kept, terminal()]], [[terminal(), terminal()]]];
    const kind = pick(3);
    wires.splice(k, kind === 2 ? 0 : 1, ...(added[kind] ?? []));
  }
  return wires.filter(([a, b]) => a !== b);
}

test('in no wiring that the judge accepts does a load get volts the engine does not know of', () => {
  // The engine counts only loads joined to line and neutral by wires and contacts. Where it accepts, the meter must
  // find nothing else at work. The accelerator is left out: it is fed back through the valve at mid, harmlessly.
  const judge = makeJudge(system);
  const random = randomFrom(7);
  const met = new Set<string>();
  for (let k = 0; k < TRIES; k++) {
    const wires = edited(random);
    const key = JSON.stringify(wires);
    if (met.has(key) || !judge.judge(wires).accepted) continue;
    met.add(key);
    for (const state of explorePlain(system, wires).met) {
      const config = { inputs: Math.floor(state / system.places), place: state % system.places };
      const { works } = evaluate(system, wires, config);
      const meter = measure(system, wires, config);
      for (const { drives, hold } of system.movers) {
        if (drives.some((drive) => works[drive]) || !works[hold]) continue;
        const motor = system.loads[must(drives[0])];
        expect(meter.amps(`${system.parts[motor?.part ?? -1]?.id}/${motor?.spec.id}`).wave, key).toBe('half');
      }
      for (const [l, { a, b, spec }] of system.loads.entries()) {
        const held = system.movers.some(({ drives, hold }) => drives.includes(l) && works[hold]);
        if (spec.via !== undefined || spec.optional || held) continue;
        const read = meter.volts(system.nodes[a] ?? '', system.nodes[b] ?? '');
        const volts = read === 'floating' ? 0 : read.volts;
        expect(works[l] ? volts >= LIVE_VOLTS : volts < IDLE_VOLTS, `${spec.id} ${volts} V in ${key}`).toBe(
          true,
        );
      }
    }
  }
  expect(met.size).toBeGreaterThanOrEqual(LEAST_ACCEPTED);
}, 30_000);
