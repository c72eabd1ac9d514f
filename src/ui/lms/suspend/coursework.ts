import { deflateSync, inflateSync } from 'fflate';
import { counts } from '../../../course/coursework/outcome.ts';
import type { Slot } from '../../../course/coursework/slots.ts';
import type { Work } from '../../../course/coursework/work.ts';
import { seedOf } from '../../../course/random.ts';
import { fromText, makeReader, makeWriter, roomFor, toText } from './bytes.ts';
import { type Dealt, rowOf, workFrom } from './work-rows.ts';

/*
  What a platform keeps of a coursework: first how every slot stands, two bytes each, then the work itself, deflated, as
  far as it fits. Where it does not, earlier goes at a slot are left out first, then visits, then what was not right;
  how a slot stands never goes.

  Form 3: when it was begun (six bytes, milliseconds since 1970), two bytes of the slots' names, how many slots follow,
  and of each its number in the coursework and a byte: goes used, and whether one was right. Then JSON, deflated.
*/

/** How a slot stands where the work itself is no longer at hand. */
export interface SlotMemory {
  readonly used: number;
  readonly right: boolean;
}

export interface CourseworkMemory {
  readonly begun: number;
  readonly work: readonly Work[];
  /** By the slot's id. */
  readonly states: ReadonlyMap<string, SlotMemory>;
}

const FORM = 3;
/** Unpacked work is never more than this: some hundred visits. */
const MOST_BYTES = 1_000_000;

/** What rows are full of: it need not be sent to be referred to. A change of it is a new form. */
const common = new TextEncoder().encode(
  `{"do":"swap","part":"{"do":"lever","valve":"{"do":"bridge","between":["{"do":"land","wire":["{"do":"lift","wire":["` +
    `{"do":"close","part":"{"do":"dead-test","pair":"N-E"},"pair":"L-E"},"pair":"L-N"},{"do":"lock"},{"do":"prove"},` +
    `{"do":"isolate"},{"do":"identify","supply":"{"do":"operate","settings":{"":"satisfied","":"calling","":"off","":"on"` +
    `{"do":"test","test":{"kind":"stands","part":"{"do":"test","test":{"kind":"works","part":"` +
    `{"do":"test","test":{"kind":"reads","instrument":"continuity","between":["{"instrument":"volts","between":["` +
    `{"do":"open","part":"programmer/heating programmer/N programmer/L cylinder-stat/common room-stat/L two-port/brown ` +
    `two-port/blue two-port/grey three-port/white three-port/orange boiler/L boiler/N pump/L pump/N pump/E spur/E spur/N ` +
    `spur/L strip/10 strip/9 strip/8 strip/7 strip/6 strip/5 strip/4 strip/3 strip/2 strip/1",0,1,0,"m",["strip/`,
);

const checkOf = (slots: readonly Slot[]): number => seedOf(slots.map(({ id }) => id).join(' ')) & 0xffff;

/** How every slot stands, from the work and from what was remembered without it. */
export function statesOf(
  slots: readonly Slot[],
  work: readonly Work[],
  remembered: ReadonlyMap<string, SlotMemory>,
): ReadonlyMap<string, SlotMemory> {
  const bySlot = Map.groupBy(work, ({ slot }) => slot);
  return new Map(
    slots.flatMap((slot): [string, SlotMemory][] => {
      const done = bySlot.get(slot.id) ?? [];
      const before = remembered.get(slot.id) ?? { used: 0, right: false };
      const used = Math.max(before.used, new Set(done.map(({ attempt }) => attempt)).size);
      const right = before.right || done.some((one) => one.right && counts(slot, one));
      return used > 0 ? [[slot.id, { used, right }]] : [];
    }),
  );
}

/** Work, what would be missed most first. */
function byWorth(work: readonly Work[]): readonly Work[] {
  const first = new Map<string, Work>();
  for (const one of work.toSorted((a, b) => a.at - b.at)) {
    const known = first.get(one.slot);
    if (!known?.right) first.set(one.slot, one);
  }
  const rank = (one: Work): number => {
    const isFirst = first.get(one.slot) === one;
    if (!isFirst) return 4;
    return (one.kind === 'visit' ? 2 : 0) + (one.right ? 0 : 1);
  };
  return work.toSorted((a, b) => rank(a) - rank(b) || b.at - a.at);
}

const bodyOf = (dealt: Dealt, work: readonly Work[]): Uint8Array => {
  // In the order in which it was done: neighbours are most alike.
  const rows = work.toSorted((a, b) => a.at - b.at).map((one) => rowOf(dealt, one));
  return deflateSync(new TextEncoder().encode(JSON.stringify(rows)), { level: 9, dictionary: common });
};

/** A coursework in at most so many characters. */
export function packCoursework(
  dealt: Dealt,
  { work, states }: Pick<CourseworkMemory, 'work' | 'states'>,
  characters: number,
): string {
  const { slots, begun } = dealt;
  const writer = makeWriter();
  writer.put(FORM, 1);
  writer.put(begun, 6);
  writer.put(checkOf(slots), 2);
  const all = statesOf(slots, work, states);
  writer.put(all.size, 1);
  for (const [k, { id }] of slots.entries()) {
    const state = all.get(id);
    if (!state) continue;
    writer.put(k, 1);
    writer.put(Math.min(state.used, 15) | (Number(state.right) << 4), 1);
  }
  const room = roomFor(characters) - writer.bytes.length;
  const order = byWorth(work);
  // The most that fits, by halving: more work never takes less room, but for a byte or two.
  let [fits, most] = [0, order.length];
  let body = bodyOf(dealt, order);
  if (body.length <= room) fits = most;
  while (fits < most) {
    const middle = Math.ceil((fits + most) / 2);
    if (bodyOf(dealt, order.slice(0, middle)).length <= room) fits = middle;
    else most = middle - 1;
  }
  body = fits === order.length ? body : bodyOf(dealt, order.slice(0, fits));
  const text = toText(fits > 0 ? [...writer.bytes, ...body] : writer.bytes);
  return text.length <= characters ? text : '';
}

/** What a platform has kept of a coursework; undefined when the text cannot be read. */
export function unpackCoursework(text: string, given: Omit<Dealt, 'begun'>): CourseworkMemory | undefined {
  const bytes = fromText(text);
  if (!bytes) return undefined;
  try {
    const reader = makeReader(bytes);
    if (reader.take(1) !== FORM) return undefined;
    const begun = reader.take(6);
    // Of a package with other tasks the numbers mean nothing; its work names its slots.
    const isSame = reader.take(2) === checkOf(given.slots);
    const states = new Map<string, SlotMemory>();
    for (let left = reader.take(1); left > 0; left--) {
      const slot = given.slots[reader.take(1)];
      const bits = reader.take(1);
      if (isSame && slot) states.set(slot.id, { used: bits & 15, right: (bits & 16) !== 0 });
    }
    if (reader.left() === 0) return { begun, work: [], states };
    const out = inflateSync(reader.rest(), { out: new Uint8Array(MOST_BYTES + 1), dictionary: common });
    if (out.length > MOST_BYTES) return undefined;
    const rows: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(out));
    if (!Array.isArray(rows)) return undefined;
    const ids = new Set(given.slots.map(({ id }) => id));
    const work = rows.flatMap((row) => workFrom({ ...given, begun }, row) ?? []);
    return { begun, work: work.filter(({ slot }) => ids.has(slot)), states };
  } catch {
    return undefined;
  }
}
