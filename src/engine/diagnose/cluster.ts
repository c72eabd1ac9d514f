import type { Branch, Circuit } from '../meter/circuit.ts';
import { solveHalf } from '../meter/half.ts';
import { rmsOf, SUPPLY_VOLTS } from '../meter/measure.ts';
import { ohmsBetween } from '../meter/ohms.ts';
import type { Load, System } from '../model/system.ts';
import type { Stand } from './world.ts';

/**
 * Common practice, as one assumption: a core that runs beside a live one is coupled to it as by this many ohms. With it
 * a multimeter of 10 MΩ reads 57 V on a floating core, within the 20 to 110 V that people meet, and a tester of low
 * impedance next to nothing. The coupling is really a capacitance; its phase does not matter to what is read.
 */
export const COUPLING_OHMS = 30e6;

interface Element {
  /** Its number among all elements of the system, dead ones too. */
  readonly k: number;
  readonly a: number;
  readonly b: number;
  readonly ohms: number;
  readonly diode: boolean;
}

/** Elements hang on the kinds of the parts and on which loads are dead: once per list of loads. */
const known = new WeakMap<readonly Load[], readonly Element[]>();

/** Elements that still conduct. Assumption: what is dead is open: a burnt winding, a broken joint on a board. */
function elementsOf({ parts, loads, nodeOf }: System): readonly Element[] {
  const found = known.get(loads);
  if (found) return found;
  let count = 0;
  const elements = parts.flatMap(({ id, kind }, part) =>
    (kind.elements ?? []).flatMap(({ id: name, between, ohms, diode = false }): Element[] => {
      const k = count++;
      if (loads.some((load) => load.part === part && load.spec.id === name && load.dead)) return [];
      const node = (end: string) => (nodeOf.get(`${id}/${end}`) ?? nodeOf.get(`${id}/(${end})`))!;
      return [{ k, a: node(between[0]), b: node(between[1]), ohms, diode }];
    }),
  );
  known.set(loads, elements);
  return elements;
}

/**
 * Answers of small circuits met before: candidates differ from each other in few places, so most of them have the same
 * circuit around a reading.
 */
export type Memo = Map<string, number>;

/** Volts met before where a system stands so, by meter and nets: many terminals share a net. */
const met = new WeakMap<Stand, Map<number, number>>();
/** More than the nets of any system. */
const NETS = 1 << 12;

function remembered(memo: Memo | undefined, key: string, work: () => number): number {
  const known = memo?.get(key);
  if (known !== undefined) return known;
  const found = work();
  memo?.set(key, found);
  return found;
}

/** The small circuit around a reading: some nets, renumbered from 0, and the elements among them. */
interface Small {
  readonly wanted: readonly number[];
  readonly branches: Branch[];
  /** The same for the same circuit. */
  readonly key: string;
}

/** The nets in `edge`, then those that elements tie to `from` without going through any in `edge`. */
function smallCircuit({ nets, system }: Stand, edge: readonly number[], from: readonly number[]): Small {
  const elements = elementsOf(system);
  const wanted = [...edge];
  const add = (net: number) => {
    if (!wanted.includes(net)) wanted.push(net);
  };
  from.forEach(add);
  for (let k = edge.length; k < wanted.length; k++) {
    for (const { a, b } of elements) {
      if (nets[a] === wanted[k]) add(nets[b]!);
      else if (nets[b] === wanted[k]) add(nets[a]!);
    }
  }
  const branches: Branch[] = [];
  let key = '';
  for (const { k, a, b, ohms, diode } of elements) {
    const p = wanted.indexOf(nets[a]!);
    const q = wanted.indexOf(nets[b]!);
    if (p < 0 || q < 0 || p === q || Math.max(p, q) < edge.length) continue;
    branches.push({ name: String(k), a: p, b: q, ohms, diode });
    key += `${k},${p},${q};`;
  }
  return { wanted, branches, key };
}

/** Whether line comes through to the terminals of any supply. */
const isLive = ({ nets, system: { supplies, supply } }: Stand): boolean =>
  supplies.some(({ out }) => nets[out.line] === nets[supply.line]);

/**
 * Volts RMS between two nodes with a meter of so many ohms across them: the nodal solution of the circuit with the meter
 * in it. 0 V where nothing is tied to the source.
 */
export function voltsAcross(
  stand: Stand,
  first: number,
  second: number,
  meterOhms: number,
  memo?: Memo,
): number {
  const { nets, system } = stand;
  const [from, to] = [nets[first]!, nets[second]!];
  if (from === to) return 0;
  const edge = [nets[system.supply.line]!, nets[system.supply.neutral]!];
  if (edge.includes(from) && edge.includes(to)) return SUPPLY_VOLTS;
  const own = met.get(stand) ?? new Map<number, number>();
  met.set(stand, own);
  const key = (meterOhms * NETS + from) * NETS + to;
  const found = own.get(key) ?? voltsBetween(stand, edge, from, to, meterOhms, memo);
  own.set(key, found);
  return found;
}

/** The same between two nets, worked out. `edge`: the nets of line and neutral. */
function voltsBetween(
  stand: Stand,
  edge: readonly number[],
  from: number,
  to: number,
  meterOhms: number,
  memo?: Memo,
): number {
  const { wanted, branches, key } = smallCircuit(stand, edge, [from, to]);
  const wired = isLive(stand) ? wanted.map((net, k) => (k > 1 ? stand.wired[net]! : 0)) : [];
  const [a, b] = [wanted.indexOf(from), wanted.indexOf(to)];
  return remembered(memo, `${meterOhms} ${a} ${b} ${wired.join('')} ${key}`, () => {
    wired.forEach((one, net) => {
      if (one === 1) branches.push({ name: 'coupling', a: 0, b: net, ohms: COUPLING_OHMS, diode: false });
    });
    return acrossMeter(branches, wanted.length, { name: 'meter', a, b, ohms: meterOhms, diode: false });
  });
}

/** Volts RMS over a meter in a small circuit whose net 0 is line and net 1 is neutral. */
function acrossMeter(branches: readonly Branch[], count: number, meter: Branch): number {
  // Nothing but the meter itself ties it to the source: no current, no volts.
  if (!branches.some(({ a, b }) => a < 2 || b < 2)) return 0;
  const all = [...branches, meter];
  const circuit: Circuit = { of: [], count, branches: all, line: 0, zero: 1, live: true, blown: false };
  const nets = Array.from({ length: count }, (_, net) => net);
  const half = (supply: number) => {
    const { volts } = solveHalf(circuit, nets, supply);
    return volts[meter.a]! - volts[meter.b]!;
  };
  const up = half(SUPPLY_VOLTS);
  // Without a diode the second half is the first turned over.
  return rmsOf([up, all.some(({ diode }) => diode) ? half(-SUPPLY_VOLTS) : up]);
}

/** The elements that can carry a direct current between two nets: what hangs on by one net alone is left out, and diodes. */
function betweenOnly({ nets, system }: Stand, from: number, to: number): Element[] {
  let kept = elementsOf(system).filter(({ a, b, diode }) => !diode && nets[a] !== nets[b]);
  for (let before = -1; before !== kept.length; ) {
    before = kept.length;
    // Per net: one other that it is tied to, counted from 1; -1 for several.
    const others = new Int16Array(nets.length + 1);
    for (const { a, b } of kept) {
      const [p, q] = [nets[a]!, nets[b]!];
      others[p] = others[p] === 0 || others[p] === q + 1 ? q + 1 : -1;
      others[q] = others[q] === 0 || others[q] === p + 1 ? p + 1 : -1;
    }
    const hangs = (net: number) => net !== from && net !== to && others[net] !== -1;
    kept = kept.filter(({ a, b }) => !hangs(nets[a]!) && !hangs(nets[b]!));
  }
  return kept;
}

/** Ohms between two nodes of a dead circuit through all that is joined to them; Infinity when nothing joins them. */
export function ohmsAcross(stand: Stand, first: number, second: number, memo?: Memo): number {
  const { nets } = stand;
  const [from, to] = [nets[first]!, nets[second]!];
  if (from === to) return 0;
  const kept = betweenOnly(stand, from, to);
  const wanted = [from, to];
  const at = (node: number): number => {
    const known = wanted.indexOf(nets[node]!);
    return known < 0 ? wanted.push(nets[node]!) - 1 : known;
  };
  const branches = kept.map(
    ({ k, a, b, ohms }): Branch => ({ name: String(k), a: at(a), b: at(b), ohms, diode: false }),
  );
  return remembered(memo, branches.map(({ name, a, b }) => `${name},${a},${b}`).join(';'), () => {
    const dead = { line: -1, zero: -1, live: false, blown: false };
    return ohmsBetween({ of: [], count: wanted.length, branches, ...dead }, 0, 1);
  });
}
