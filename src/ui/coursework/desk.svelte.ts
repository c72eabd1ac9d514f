import type { Coursework, Learner } from '../../course/coursework/coursework.ts';
import { type Outcome, outcomeOf } from '../../course/coursework/outcome.ts';
import { type Slot, slotsOf, variantSeed } from '../../course/coursework/slots.ts';
import type { Sitting, Work } from '../../course/coursework/work.ts';
import { lessonsOf, type Outline } from '../../course/outline.ts';
import { isWithin, unitedSitting } from '../../store/sittings.ts';
import type { KeptStore } from '../../store/store.ts';
import { placeOf } from './draft.ts';
import type { Names } from './names.ts';
import {
  attemptAt,
  canAnswer,
  dealsAlike,
  leftAt,
  mayAdd,
  nextAfter,
  strangerIn,
  workOn,
} from './standing.ts';

/** The parts of the store that a desk works with. */
export type DeskStore = Pick<
  KeptStore,
  | 'sitting'
  | 'keepSitting'
  | 'draft'
  | 'keepDraft'
  | 'dropDraft'
  | 'trialsOf'
  | 'add'
  | 'now'
  | 'onChange'
  | 'troubles'
>;

/** When a result was saved, and how many answers it had. */
export interface Handed {
  readonly at: number;
  readonly answers: number;
}

type Added = Work extends infer W ? (W extends Work ? Omit<W, 'at'> : never) : never;

/** One learner at one coursework: what there is to do, what has been done, what it comes to. */
export class CourseworkDesk {
  readonly store: DeskStore;
  readonly outline: Outline;
  readonly names: Names;
  readonly slots: readonly Slot[];
  sitting: Sitting;
  /** In words, when this device keeps nothing of what is done. */
  trouble = $state('');
  /** Another version has been begun in another tab. */
  #replaced = false;
  readonly #stop: () => void;

  /** Throws a RangeError that names what the course does not have. */
  constructor(store: DeskStore, outline: Outline, names: Names, sitting: Sitting) {
    this.store = store;
    this.outline = outline;
    this.names = names;
    this.sitting = $state.raw(sitting);
    const lessons = lessonsOf(outline);
    this.slots = slotsOf(sitting.coursework, (slug) => {
      const lesson = lessons.find((one) => one.slug === slug);
      if (!lesson) throw new RangeError(`There is no lesson “${slug}” in this course.`);
      return lesson.objectives;
    });
    const strange = strangerIn(this.slots, names);
    if (strange) throw new RangeError(`There is no ${strange} in this course.`);
    this.#stop = store.onChange(() => void this.#refresh());
  }

  get coursework(): Coursework {
    return this.sitting.coursework;
  }

  get learner(): Learner {
    return this.sitting.learner;
  }

  readonly outcome: Outcome = $derived.by(() =>
    outcomeOf(this.sitting.coursework, this.slots, this.sitting.work),
  );
  /** The first thing that can still be answered. */
  readonly next: Slot | undefined = $derived.by(() => this.nextAfter(undefined));

  /** What can still be answered, from the slot after this one on, and then from the beginning. */
  nextAfter(id: string | undefined): Slot | undefined {
    return nextAfter(this.slots, this.outcome, id);
  }

  slot(id: string): Slot | undefined {
    return this.slots.find((slot) => slot.id === id);
  }

  /** Whether an answer to the slot would still count. */
  canAnswer(slot: Slot): boolean {
    return canAnswer(this.outcome, slot);
  }

  /** What was done for a slot, in order. */
  workOn(slot: string): readonly Work[] {
    return workOn(this.sitting.work, slot);
  }

  /** The number of the attempt that comes next, from 1. */
  attemptAt(slot: string): number {
    return attemptAt(this.sitting.work, slot);
  }

  /** How many attempts at a slot are left; none once it is right. */
  left(slot: Slot): number {
    return leftAt(this.outcome, slot, this.sitting.work);
  }

  /** What deals this learner's variant of a slot. */
  seed(slot: Slot, attempt: number): number {
    return variantSeed(this.coursework, this.learner.code, slot, attempt);
  }

  /**
   * Adds a piece of work and keeps it at once.
   * @returns false when the attempt has been used up meanwhile, in another tab: then nothing is added
   */
  async add(work: Added): Promise<boolean> {
    await this.#refresh();
    const slot = this.#replaced ? undefined : this.slot(work.slot);
    if (!slot || !mayAdd(this.outcome, slot, this.sitting.work, work)) return false;
    const at = this.store.now();
    this.sitting = { ...this.sitting, at, work: [...this.sitting.work, { ...work, at } as Work] };
    await this.#keep();
    return true;
  }

  /** Keeps the sitting as it is, for the first time or again. */
  async #keep(): Promise<void> {
    await this.store.keepSitting($state.snapshot(this.sitting) as Sitting);
    this.trouble = troubleOf(this.store);
  }

  /** Begins: from here on the device has it. */
  async begin(): Promise<void> {
    await this.#refresh();
    await this.#keep();
  }

  /** Takes in what another tab has done. */
  async #refresh(): Promise<void> {
    const kept = await this.store.sitting(this.sitting.id);
    this.trouble = troubleOf(this.store);
    if (!kept) return;
    if (!dealsAlike(kept.coursework, this.sitting.coursework)) {
      // The later version counts. Work on the one does not fit the other.
      this.#replaced = kept.begun > this.sitting.begun;
      if (this.#replaced) this.trouble = REPLACED;
      return;
    }
    // A store keeps what it had and this lacks, so only what is new here needs taking in.
    if (!isWithin(kept, this.sitting)) this.sitting = unitedSitting(this.sitting, kept);
  }

  /** The name of this learner's result: `unvented-week-AB12.json`. */
  get fileName(): string {
    return `${this.coursework.id}-${this.learner.code}.json`;
  }

  /** When this was handed in last, in milliseconds since 1970, and with how many answers; undefined before. */
  async handed(): Promise<Handed | undefined> {
    const data = (await this.store.draft(this.#handedPlace))?.answer as Partial<Handed> | undefined;
    const { at, answers } = data ?? {};
    return typeof at === 'number' && typeof answers === 'number' ? { at, answers } : undefined;
  }

  async markHanded(): Promise<Handed> {
    const handed = { at: this.store.now(), answers: this.sitting.work.length };
    await this.store.keepDraft({
      place: this.#handedPlace,
      item: 'coursework',
      answer: handed,
      at: handed.at,
    });
    return handed;
  }

  get #handedPlace(): string {
    return placeOf(this.sitting.id, 'handed');
  }

  stop(): void {
    this.#stop();
  }
}

const REPLACED =
  'Another version of this coursework has been begun in another tab or window. Nothing more is kept here: close this page.';

/** What stops this device from keeping things, in words; empty when nothing does. */
const troubleOf = (store: Pick<KeptStore, 'troubles'>): string => {
  const found = store.troubles().find(({ kind }) => kind === 'blocked' || kind === 'full');
  return found ? `${found.says} ${found.todo}` : '';
};
