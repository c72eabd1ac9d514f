import type { Answer, Choice, Form, Judgement, Note } from '../item.ts';

/** What is said of an option that was judged wrongly: chosen though it is wrong, or left out though it is right. */
export type Words = Omit<Note, 'about'>;

/** An option, whether it holds, and what to say of it when the learner has it the other way round. */
export interface Option extends Choice {
  readonly right: boolean;
  readonly why: () => Words;
}

export const pickForm = (options: readonly Option[], many: boolean): Form => ({
  kind: 'choice',
  many,
  options: options.map(({ id, says }) => ({ id, says })),
});

/** The right answer. */
export const rightPick = (options: readonly Option[]): Answer => ({
  kind: 'choice',
  chosen: options.filter(({ right }) => right).map(({ id }) => id),
});

/**
 * Judges what was chosen: each option that is chosen wrongly is told, and with `many` each right one that was left
 * out. With one right option, leaving it out is told by what was chosen instead.
 */
export function judgePick(options: readonly Option[], many: boolean) {
  return (answer: Answer): Judgement => {
    const chosen = new Set(answer.kind === 'choice' ? answer.chosen : []);
    const notes = options.flatMap(({ id, right, why }): Note[] => {
      const missed = many && right && !chosen.has(id);
      return missed || (!right && chosen.has(id)) ? [{ about: id, ...why() }] : [];
    });
    for (const id of chosen) if (!options.some((one) => one.id === id)) notes.push(notOffered(id));
    if (notes.length === 0 && !options.some(({ id, right }) => right && chosen.has(id)))
      notes.push(nothingChosen(options));
    return { right: notes.length === 0, notes };
  };
}

const notOffered = (id: string): Note => ({
  about: id,
  cause: `“${id}” is not one of the answers here.`,
  consequence: `Nothing can be told from “${id}”.`,
  look: `Choose from the list, and leave “${id}” out.`,
});

const nothingChosen = (options: readonly Option[]): Note => ({
  about: '',
  cause: `None of the ${options.length} answers is chosen, and one of them holds.`,
  consequence: 'A question passed over on a job is a check not made.',
  look: `Start with “${options[0]?.says ?? ''}”: does it hold here?`,
});
