import type { Coursework } from '../coursework/coursework.ts';
import type { Slot } from '../coursework/slots.ts';
import type { GradeSource } from '../coursework/source.ts';
import { type Book, type Graded, makeBook } from './book.ts';
import type { Chosen } from './class.ts';
import { makeResultGrader, type Read } from './grade-result.ts';
import type { Slip } from './own-numbers.ts';
import type { Piece } from './piece.ts';

/** Whether it is worth asking whose work a piece is. */
export const isStray = ({ marked, kind }: Pick<Piece, 'marked' | 'kind'>): boolean =>
  marked.made === 'for another' || (marked.made === 'unknown' && kind === 'job');

/** The wrong circuits among pieces, each once, with a piece that has it. */
export function wrongCircuits(pieces: Iterable<Piece>): Map<string, Piece> {
  const wrong = new Map<string, Piece>();
  for (const piece of pieces)
    if (
      piece.wiring &&
      !piece.marked.right &&
      piece.marked.rules.length > 0 &&
      !wrong.has(piece.wiring.circuit)
    )
      wrong.set(piece.wiring.circuit, piece);
  return wrong;
}

/** A class marked from beginning to end in one go, for whoever has no page to show meanwhile. */
export function markClass(
  chosen: Chosen,
  slots: readonly Slot[],
  source: GradeSource,
  reads: readonly Read[],
  now: number,
): { readonly book: Book; readonly slips: ReadonlyMap<string, readonly Slip[]> } {
  const { coursework } = chosen;
  const own = reads.filter(({ result }) => result.coursework.id === coursework.id);
  const grader = makeResultGrader(coursework, slots, source);
  const codes = [...new Set(own.map(({ result }) => result.learner.code))];
  const works = new Map(own.map(({ file, result }) => [file, result.work]));
  const graded = own.map(
    ({ file, result }): Graded => ({
      ...headOf({ file, result }),
      pieces: grader.grade({ file, result }).map((piece) => {
        const work = result.work[piece.index];
        const whose = work && isStray(piece) ? grader.whose(work, codes) : undefined;
        return whose === undefined || whose === result.learner.code ? piece : { ...piece, whose };
      }),
    }),
  );
  const slips = new Map<string, readonly Slip[]>();
  for (const [circuit, { file, index }] of wrongCircuits(graded.flatMap(({ pieces }) => pieces))) {
    const work = works.get(file)?.[index];
    if (work) slips.set(circuit, grader.slips(work));
  }
  return { book: makeBook(chosen, slots, [...graded, ...strangers(reads, coursework)], now, slips), slips };
}

/** Results of other courseworks: they are named in the book and not graded. */
const strangers = (reads: readonly Read[], { id }: Coursework): Graded[] =>
  reads
    .filter(({ result }) => result.coursework.id !== id)
    .map((read): Graded => ({ ...headOf(read), pieces: [] }));

/** A result without its work. */
export const headOf = ({
  file,
  result: { coursework, learner, begun, made },
}: Read): Omit<Graded, 'pieces'> => ({
  file,
  coursework,
  learner,
  begun,
  made,
});
