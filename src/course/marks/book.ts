import type { Coursework } from '../coursework/coursework.ts';
import { counts, type Outcome, outcomeOf } from '../coursework/outcome.ts';
import type { Slot } from '../coursework/slots.ts';
import { type Chosen, gatherClass, type Handed, type ResultHead } from './class.ts';
import { copiedFlags } from './copied.ts';
import { courseworkPrint } from './fingerprint.ts';
import { type Flag, gravest } from './flag.ts';
import type { Piece, SlipsByCircuit, Turn } from './piece.ts';
import { timingFlags } from './timing.ts';
import { sayCount, sayList, sayPieces } from './words.ts';

/** A result whose work has been graded again. */
export interface Graded extends ResultHead {
  readonly pieces: readonly Piece[];
}

/** One learner in the mark book. */
export interface Entry {
  readonly code: string;
  readonly names: readonly string[];
  readonly files: readonly string[];
  /** In the order in which it was done. */
  readonly turns: readonly Turn[];
  readonly outcome: Outcome;
  /** The gravest first. */
  readonly flags: readonly Flag[];
}

export interface Book {
  readonly chosen: Chosen;
  readonly slots: readonly Slot[];
  /** In the order of their codes. */
  readonly entries: readonly Entry[];
  /** Files with results of another coursework; they are not marked. */
  readonly others: readonly string[];
}

/**
 * Makes the mark book of a class.
 * @param now milliseconds since 1970
 * @param slips what is wrong with wrong circuits, as far as it has been worked out
 */
export function makeBook(
  chosen: Chosen,
  slots: readonly Slot[],
  graded: readonly Graded[],
  now: number,
  slips: SlipsByCircuit = new Map(),
): Book {
  const { coursework } = chosen;
  const { learners, others } = gatherClass(graded, coursework);
  const print = courseworkPrint(coursework);
  const bySlot = new Map(slots.map((slot) => [slot.id, slot]));
  const united = learners.map((learner) => ({ learner, ...unite(learner, bySlot) }));
  const copied = Map.groupBy(
    copiedFlags(
      united.map(({ learner: { code }, turns }) => ({ code, turns })),
      slips,
    ),
    ({ code }) => code,
  );
  const entries = united.map(({ learner, turns, edited }): Entry => {
    const { code, names, results } = learner;
    const flags = [
      ...(copied.get(code) ?? []),
      ...toldFlags(code, turns),
      ...edited,
      ...goesFlags(code, turns, bySlot),
      ...timingFlags(code, turns, results, now),
      ...headFlags(learner, coursework, print),
    ];
    return {
      code,
      names,
      files: results.map(({ file }) => file),
      turns,
      outcome: outcomeOf(
        coursework,
        slots,
        turns.map(({ slot, attempt, turn, hints, marked }) => ({
          slot,
          attempt: Math.max(attempt, turn),
          hints,
          right: marked.right,
        })),
      ),
      flags: flags.sort(gravest),
    };
  });
  return { chosen, slots, entries, others: others.map(({ file }) => file) };
}

const momentOf = ({ slot, attempt, at }: Piece) => `${slot} ${attempt} ${at}`;

/** A learner's work out of all their files, each piece once, in the order in which it was done. */
function unite(
  { code, results }: Handed<Graded>,
  bySlot: ReadonlyMap<string, Slot>,
): { turns: Turn[]; edited: Flag[] } {
  const kept: Piece[] = [];
  const edited = new Set<string>();
  const moments = new Map<string, Set<string>>();
  for (const piece of results.flatMap(({ pieces }) => pieces)) {
    const prints = moments.get(momentOf(piece)) ?? new Set();
    if (prints.has(piece.print)) continue;
    if (prints.size > 0) edited.add(piece.slot);
    moments.set(momentOf(piece), prints.add(piece.print));
    kept.push(piece);
  }
  const goes = new Map<string, number>();
  const turns = kept
    .sort((a, b) => a.at - b.at || a.attempt - b.attempt)
    .map((piece): Turn => {
      const turn = (goes.get(piece.slot) ?? 0) + 1;
      goes.set(piece.slot, turn);
      const slot = bySlot.get(piece.slot);
      const attempt = Math.max(piece.attempt, turn);
      return { ...piece, turn, counts: slot !== undefined && counts(slot, { attempt, hints: piece.hints }) };
    });
  const slots = [...edited];
  if (slots.length === 0) return { turns, edited: [] };
  const says = `${sayPieces(slots)}: two files hold the same go at the same moment with different work in it. One of them was changed afterwards. Ask which.`;
  return { turns, edited: [{ kind: 'edited', weight: 'strong', code, others: [], says }] };
}

/** Where the file says right and the engine does not. */
function toldFlags(code: string, turns: readonly Turn[]): Flag[] {
  const told = turns.filter((turn) => turn.told && !turn.marked.right && turn.marked.made !== 'for another');
  if (told.length === 0) return [];
  const slots = told.map(({ slot }) => slot);
  return [
    {
      kind: 'told',
      weight: 'strong',
      code,
      others: [],
      ...(new Set(slots).size === 1 && { slot: slots[0] }),
      says: `The file says that ${sayPieces(slots)} is right; graded again from the work it is not, and it is marked so. The file was changed by hand, or comes from another version of this site.`,
    },
  ];
}

function goesFlags(code: string, turns: readonly Turn[], bySlot: ReadonlyMap<string, Slot>): Flag[] {
  const over = [...Map.groupBy(turns, ({ slot }) => slot)].filter(
    ([id, own]) => own.length > (bySlot.get(id)?.task.attempts ?? Number.POSITIVE_INFINITY),
  );
  if (over.length === 0) return [];
  const says = `${sayPieces(over.map(([id]) => id))}: more goes than are allowed, over all files of this learner. Only the first ones in time count. A second device makes this, and so does beginning again.`;
  return [{ kind: 'more-goes', weight: 'look', code, others: [], says }];
}

function headFlags({ code, names, results }: Handed<Graded>, coursework: Coursework, print: string): Flag[] {
  const flags: Flag[] = [];
  const differing = results.filter((result) => courseworkPrint(result.coursework) !== print);
  if (differing.length > 0) {
    const files = sayCount(differing.length, 'result');
    flags.push({
      kind: 'differs',
      weight: 'look',
      code,
      others: [],
      says: `${files} of this learner came with another version of “${coursework.title}”. The work is marked by the version that this book is opened with, so questions dealt by the other one do not fit.`,
    });
  }
  if (names.length > 1)
    flags.push({
      kind: 'names',
      weight: 'look',
      code,
      others: [],
      says: `This code came with more than one name: ${sayList(names)}. Perhaps a code was typed wrongly.`,
    });
  return flags;
}
