import type { CourseworkTask } from '../../../course/coursework/coursework.ts';
import { askTask } from '../../items/bank.ts';
import { Desk } from '../desk.svelte.ts';
import type { Known } from '../known.ts';
import type { Trouble } from '../trouble.ts';
import { type CourseworkDraft, readCourseworkDraft } from './draft.ts';
import { courseworkTroubles } from './troubles.ts';

type Questions = Extract<CourseworkTask, { kind: 'questions' }>;

const keyOf = ({ about, level }: Questions): string => JSON.stringify([about, level]);

/** The desk for courseworks: besides the draft it has what the course offers, and which questions can be made. */
export class CourseworkDesk extends Desk<CourseworkDraft> {
  known = $state.raw<Known | undefined>();
  /** Why questions of a sort cannot be made, by what is asked; empty words where they can. */
  #asked = $state.raw<ReadonlyMap<string, string>>(new Map());

  readonly troubles: readonly Trouble[] = $derived.by(() => {
    const { draft, known } = this;
    if (!draft || !known) return [];
    const asked = draft.tasks.flatMap((task, k): Trouble[] => {
      const why = task.kind === 'questions' ? this.#asked.get(keyOf(task)) : undefined;
      return why ? [{ place: `tasks[${k}].about`, says: why }] : [];
    });
    const told = courseworkTroubles(draft, known);
    return [...told, ...asked.filter(({ place }) => !told.some((one) => one.place.startsWith(place)))];
  });

  constructor() {
    super({
      kind: 'coursework',
      nameOf: ({ title }) => title.trim() || 'A coursework without a title',
      read: readCourseworkDraft,
    });
  }

  /** Makes a question of each sort that the draft asks for: call it whenever the draft has changed. */
  async tryQuestions(): Promise<void> {
    for (const task of this.draft?.tasks ?? []) {
      if (task.kind !== 'questions' || this.#asked.has(keyOf(task))) continue;
      const why = await whyNot(task);
      if (why !== undefined) this.#asked = new Map([...this.#asked, [keyOf(task), why]]);
    }
  }
}

/** Undefined where it could not be found out. */
async function whyNot({ about, level }: Questions): Promise<string | undefined> {
  try {
    await askTask(about, 1, level);
    return '';
  } catch (error) {
    // Anything else is a lost connection.
    return error instanceof RangeError
      ? 'Expected something that gives a question of this sort; this choice gives none. Choose others.'
      : undefined;
  }
}
