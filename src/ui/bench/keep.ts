import { type Bench, checkBench, writeBench } from '../../files/bench.ts';
import { owned, ownName } from '../../store/owner.ts';
import type { Kept } from '../wiring/keep.ts';

/** Benches kept on this device, each under a key of its own, so that two open pages do not overwrite each other's. */
const BENCH = 'switched-live/bench/1/';
/** The one that was open last. */
const OPEN = 'switched-live/bench-open';

export interface KeptBench {
  readonly id: string;
  readonly bench: Bench;
}

/** Does something with the device's storage and says how it went. */
function tried(what: () => void): Kept {
  try {
    what();
    return 'kept';
  } catch (problem) {
    return problem instanceof DOMException && problem.name === 'QuotaExceededError' ? 'full' : 'blocked';
  }
}

export const keepBench = ({ id, bench }: KeptBench): Kept =>
  tried(() => localStorage.setItem(owned(BENCH + id), writeBench(bench)));

export const forgetBench = (id: string): Kept => tried(() => localStorage.removeItem(owned(BENCH + id)));

export const keepOpen = (id: string): Kept => tried(() => localStorage.setItem(owned(OPEN), id));

/** Every bench on this device that can be read, by name, and which was open last. What cannot be read stays where it is. */
export function keptBenches(): { readonly benches: KeptBench[]; readonly open: string | undefined } {
  try {
    const benches = Object.keys(localStorage).flatMap((key): KeptBench[] => {
      const name = ownName(key);
      const bench = name?.startsWith(BENCH) ? read(key) : undefined;
      return name !== undefined && bench ? [{ id: name.slice(BENCH.length), bench }] : [];
    });
    benches.sort((a, b) => a.bench.name.localeCompare(b.bench.name, 'en', { numeric: true }));
    return { benches, open: localStorage.getItem(owned(OPEN)) ?? undefined };
  } catch {
    return { benches: [], open: undefined };
  }
}

function read(key: string): Bench | undefined {
  try {
    return checkBench(JSON.parse(localStorage.getItem(key) ?? 'null'), key);
  } catch {
    return undefined;
  }
}

/** A name for a bench's key that no other has. */
export const freshId = (): string =>
  `${Date.now().toString(36)}-${Math.floor(Math.random() * 1e9).toString(36)}`;
