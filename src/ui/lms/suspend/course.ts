import { byObjective, DAY, freshAnswers, isRightAlone } from '../../../course/progress/answers.ts';
import { timeOfDay } from '../../../course/progress/day.ts';
import { levelIn } from '../../../course/progress/difficulty.ts';
import type { Trial } from '../../../course/trial.ts';
import type { Choices } from '../../../store/store.ts';
import {
  byHash,
  fromText,
  hashOf,
  makeReader,
  makeWriter,
  type Reader,
  roomFor,
  toText,
  type Writer,
} from './bytes.ts';

/*
  What a platform keeps of the course: of each objective the newest answers, so that mastery, help and revision come out
  the same on another device. Where there is little room, fewer answers of each are kept, down to the five that decide
  whether it is solid; then only these five as right or not. What stands never goes.

  Form 1, of each objective: three bytes of its id's hash, how many answers, the minute of the newest (three bytes, from
  2024), minutes back from each to the one before, and a byte each: right, hints, steps shown, level.
  Form 2: the hash, the day of the newest (two bytes, from 2024), and a byte: how many answers, and a bit each.
*/

/** What there is to keep, and what comes back. */
export interface CourseMemory {
  readonly trials: readonly Trial[];
  readonly choices: Pick<Choices, 'route' | 'assessment'>;
}

/** An objective that the course has now. */
export interface KnownObjective {
  readonly id: string;
  /** How its questions are solved, as trials name it. */
  readonly method: string;
}

const START = Date.UTC(2024, 0, 1);
const MINUTE = 60_000;
const MOST_MINUTES = 0xffffff;
const TIMED = 1;
const BARE = 2;
/** Answers of each objective, in the order in which it is tried whether they fit. */
const DEPTHS = [24, 16, 12, 10, 8, 7, 6, 5] as const;
/** Solid is judged by so many answers. */
const DECIDING = 5;

const minuteOf = ({ at }: Pick<Trial, 'at'>): number =>
  Math.min(Math.max(0, Math.floor((at - START) / MINUTE)), MOST_MINUTES);
const dayOf = (at: number): number => Math.min(Math.max(0, Math.floor((at - START) / DAY)), 0xffff);

/** What an answer was worth, in six bits. */
const flagsOf = ({ right, hints, shown, item }: Trial): number =>
  Number(right) | (Math.min(hints, 3) << 1) | (Number(shown > 0) << 3) | ((levelIn(item) ?? 0) << 4);

function putHead(writer: Writer, form: number, { route, assessment }: CourseMemory['choices']) {
  writer.put(form, 1);
  const day = assessment === undefined ? undefined : timeOfDay(assessment);
  writer.put(day === undefined ? 0 : dayOf(day), 2);
  writer.put(route === undefined ? 0 : hashOf(route), 3);
}

function timed(logs: readonly Log[], choices: CourseMemory['choices'], depth: number): number[] {
  const writer = makeWriter();
  putHead(writer, TIMED, choices);
  for (const [id, answers] of logs) {
    const newest = answers.slice(-depth).reverse();
    writer.put(hashOf(id), 3);
    writer.put(newest.length, 1);
    for (const [k, answer] of newest.entries()) {
      const before = newest[k - 1];
      if (before) writer.putAny(minuteOf(before) - minuteOf(answer));
      else writer.put(minuteOf(answer), 3);
      writer.put(flagsOf(answer), 1);
    }
  }
  return writer.bytes;
}

function bare(logs: readonly Log[], choices: CourseMemory['choices'], room: number): number[] {
  const writer = makeWriter();
  putHead(writer, BARE, choices);
  for (const [id, answers] of logs) {
    if (writer.bytes.length + 6 > room) break;
    const newest = answers.slice(-DECIDING);
    writer.put(hashOf(id), 3);
    writer.put(dayOf(newest.at(-1)?.at ?? 0), 2);
    writer.put(
      newest.reduce((bits, answer, k) => bits | (Number(isRightAlone(answer)) << k), newest.length << 5),
      1,
    );
  }
  return writer.bytes;
}

type Log = readonly [objective: string, answers: readonly Trial[]];

/**
 * The course in at most so many characters.
 * @param trials the whole log, in any order
 */
export function packCourse({ trials, choices }: CourseMemory, characters: number): string {
  const logs = [...byObjective(trials)].flatMap(([id, own]): Log[] => {
    const answers = freshAnswers(own);
    return answers.length > 0 ? [[id, answers]] : [];
  });
  // What was answered last comes first: should room be short even so, it is what is kept.
  logs.sort(([, a], [, b]) => (b.at(-1)?.at ?? 0) - (a.at(-1)?.at ?? 0));
  const room = roomFor(characters);
  for (const depth of DEPTHS) {
    const bytes = timed(logs, choices, depth);
    if (bytes.length <= room) return toText(bytes);
  }
  return toText(bare(logs, choices, room));
}

interface Kept {
  readonly minute: number;
  readonly flags: number;
}

/** A trial as it comes back: its question is not kept, and its address says so. */
const trialFrom = ({ minute, flags }: Kept, { id, method }: KnownObjective, k: number): Trial => ({
  at: START + minute * MINUTE + k,
  objective: id,
  item: `resumed/${minute}-${k}/${flags >> 4}`,
  method,
  right: (flags & 1) === 1,
  attempt: 1,
  hints: (flags >> 1) & 3,
  shown: (flags >> 3) & 1,
  took: 0,
  mode: id.startsWith('callout-') ? 'callout' : 'practice',
});

function readTimed(reader: Reader): Kept[] {
  const kept: Kept[] = [];
  for (let k = reader.take(1), minute = 0; k > 0; k--) {
    minute = kept.length === 0 ? reader.take(3) : Math.max(0, minute - reader.takeAny());
    kept.unshift({ minute, flags: reader.take(1) });
  }
  return kept;
}

/** All on the day of the newest, a minute apart: their own times are not kept. */
function readBare(reader: Reader): Kept[] {
  const minute = reader.take(2) * 1440;
  const bits = reader.take(1);
  const count = Math.min(bits >> 5, DECIDING);
  return Array.from({ length: count }, (_, k) => ({
    minute: minute + k,
    flags: (bits >> k) & 1,
  }));
}

/** Which of the answers that come back are not here. Each that is here accounts for one of its minute and worth. */
function missing(kept: readonly Kept[], here: readonly Trial[], objective: KnownObjective): Trial[] {
  const counts = new Map<string, number>();
  const items = new Set(here.map(({ item }) => item));
  for (const trial of here) {
    const key = `${minuteOf(trial)} ${flagsOf(trial)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return kept.flatMap((one) => {
    const key = `${one.minute} ${one.flags}`;
    const left = counts.get(key) ?? 0;
    counts.set(key, left - 1);
    if (left > 0) return [];
    let k = 0;
    while (items.has(trialFrom(one, objective, k).item) || items.has(`at ${one.minute}-${k}`)) k++;
    const trial = trialFrom(one, objective, k);
    items.add(trial.item).add(`at ${one.minute}-${k}`);
    return [trial];
  });
}

/**
 * What a platform has kept of the course and this device lacks; undefined when the text cannot be read. Objectives and
 * routes that the course no longer has are passed over.
 * @param here the log of this device
 */
export function unpackCourse(
  text: string,
  objectives: readonly KnownObjective[],
  routes: readonly string[],
  here: readonly Trial[],
): CourseMemory | undefined {
  const bytes = fromText(text);
  if (!bytes) return undefined;
  const ids = byHash(objectives.map(({ id }) => id));
  const known = new Map(objectives.map((objective) => [objective.id, objective]));
  const logs = byObjective(here);
  try {
    const reader = makeReader(bytes);
    const form = reader.take(1);
    if (form !== TIMED && form !== BARE) return undefined;
    const day = reader.take(2);
    const route = byHash(routes).get(reader.take(3));
    const trials: Trial[] = [];
    while (reader.left() > 0) {
      const objective = known.get(ids.get(reader.take(3)) ?? '');
      const kept = form === TIMED ? readTimed(reader) : readBare(reader);
      if (!objective) continue;
      const own = freshAnswers(logs.get(objective.id) ?? []);
      // Bare answers have no times of their own: where this device knows of anything as late, it knows better.
      const last = own.at(-1);
      if (form === BARE && last && dayOf(last.at) * 1440 >= (kept[0]?.minute ?? 0)) continue;
      trials.push(...missing(kept, own, objective));
    }
    const assessment = day === 0 ? undefined : new Date(START + day * DAY).toISOString().slice(0, 10);
    return {
      trials,
      choices: { ...(route !== undefined && { route }), ...(assessment !== undefined && { assessment }) },
    };
  } catch {
    return undefined;
  }
}
