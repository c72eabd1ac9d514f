import type { Flag } from './flag.ts';
import type { Turn } from './piece.ts';
import { sayPieces, saySpan } from './words.ts';

/**
 * The least times that hands and eyes need, in milliseconds. Nobody publishes such values: they are assumptions, taken
 * far below what the quickest of us needed, so that what is quicker still was hardly done by hand.
 */
export const leastTimes = {
  /** To find both ends of a wire and press them. */
  wire: 400,
  /** To read a question and answer it. */
  question: 1500,
  /** To do one act on a visit and see what comes of it. */
  act: 250,
} as const;

/** Clocks of one machine, read one after the other, may differ by so much, ms. */
const SLACK = 2000;
/** Clocks of two machines may, ms. */
const CLOCKS_APART = 10 * 60_000;

/** The least time that a piece of work takes, ms. */
export function leastTime({ kind, deeds }: Pick<Turn, 'kind' | 'deeds'>): number {
  if (kind === 'question') return leastTimes.question;
  return deeds * (kind === 'job' ? leastTimes.wire : leastTimes.act);
}

/** When a result was begun and made. */
interface Span {
  readonly file: string;
  readonly begun: number;
  readonly made: number;
}

/**
 * What does not fit in the times of one learner's work.
 * @param now milliseconds since 1970
 */
export function timingFlags(
  code: string,
  turns: readonly Turn[],
  spans: readonly Span[],
  now: number,
): Flag[] {
  const flag = (kind: Flag['kind'], weight: Flag['weight'], says: string, slot?: string): Flag => ({
    kind,
    weight,
    code,
    others: [],
    says,
    ...(slot !== undefined && { slot }),
  });
  const quick = turns
    .filter((turn) => turn.took < leastTime(turn))
    .map((turn) => flag('quick', 'look', sayQuick(turn), turn.slot));
  return [...quick, ...overlaps(turns, flag), ...clocks(turns, spans, now, flag), ...outOfOrder(turns, flag)];
}

type MakeFlag = (kind: Flag['kind'], weight: Flag['weight'], says: string, slot?: string) => Flag;

function sayQuick(turn: Turn): string {
  const { kind, deeds, took } = turn;
  const what =
    kind === 'question'
      ? 'A question was answered'
      : kind === 'job'
        ? `${deeds} wires were moved`
        : `${deeds} things were done on a visit`;
  return `${what} in ${saySpan(took)}; hands need ${saySpan(leastTime(turn))} at least, we assume. Ask how it was done.`;
}

function overlaps(turns: readonly Turn[], flag: MakeFlag): Flag[] {
  const byStart = [...turns].sort((a, b) => a.at - a.took - (b.at - b.took));
  const both: string[] = [];
  let last: Turn | undefined;
  for (const turn of byStart) {
    if (last && turn.slot !== last.slot && turn.at - turn.took + SLACK < last.at)
      both.push(turn.slot, last.slot);
    if (!last || turn.at > last.at) last = turn;
  }
  if (both.length === 0) return [];
  const slots = [...new Set(both)];
  return [
    flag(
      'overlap',
      'weak',
      `Work on ${sayPieces(slots)} overlaps in time. Two windows or devices make this, and so does another pair of hands.`,
    ),
  ];
}

function clocks(turns: readonly Turn[], spans: readonly Span[], now: number, flag: MakeFlag): Flag[] {
  const flags: Flag[] = [];
  const say = (says: string) => flags.push(flag('clock', 'look', `${says} A wrong clock does this too.`));
  for (const { file, begun, made } of spans) {
    const own = turns.filter((turn) => turn.file === file);
    const early = own.filter(({ at }) => at + SLACK < begun);
    const late = own.filter(({ at }) => at > made + SLACK);
    if (early.length > 0)
      say(`${sayPieces(early.map(({ slot }) => slot))} was finished before the coursework was begun.`);
    if (late.length > 0)
      say(`The result says that it was made before ${sayPieces(late.map(({ slot }) => slot))} was done.`);
    if (made + SLACK < begun) say('The result says that it was made before the coursework was begun.');
    if (Math.max(made, ...own.map(({ at }) => at)) > now + CLOCKS_APART)
      say('The result carries a time that has not come yet.');
  }
  return flags;
}

function outOfOrder(turns: readonly Turn[], flag: MakeFlag): Flag[] {
  const wrong = [...Map.groupBy(turns, ({ slot, file }) => `${file} ${slot}`).values()].filter((own) => {
    const byTime = [...own].sort((a, b) => a.at - b.at);
    return byTime.some(({ attempt }, k) => k > 0 && attempt < (byTime[k - 1]?.attempt ?? 0));
  });
  const slots = [...new Set(wrong.flatMap(([first]) => (first ? [first.slot] : [])))];
  if (slots.length === 0) return [];
  return [
    flag(
      'order',
      'look',
      `A later go at ${sayPieces(slots)} carries an earlier time than the one before it.`,
    ),
  ];
}
