import { freshId } from '../bench/keep.ts';
import type { Kept } from '../wiring/keep.ts';
import {
  type DeskKind,
  draftOfKey,
  forgetDraft,
  type KeptDraft,
  keepDraft,
  keepOpen,
  keptDraft,
  keptDrafts,
} from './keep.ts';

/** Undo reaches back this far. */
const DEPTH = 300;

/** What a desk must know of the kind of file that is made on it. */
export interface Format<T> {
  readonly kind: DeskKind;
  /** What stands in the list of drafts. */
  readonly nameOf: (draft: T) => string;
  /** A draft as it was kept, or undefined for what is none. */
  readonly read: (data: unknown) => T | undefined;
}

/** The drafts of one kind of file on this device, and the one that is open with what was done to it. Drafts are plain data. */
export class Desk<T extends object> {
  readonly format: Format<T>;
  drafts = $state.raw<readonly KeptDraft<T>[]>([]);
  id = $state('');
  #states = $state.raw<readonly T[]>([]);
  #at = $state(0);
  /** The field that is being typed in: what is typed in one go is undone in one go. */
  #typing: string | undefined;
  kept = $state<Kept>('kept');
  message = $state('');
  /** The draft deleted last, which can be brought back. */
  deleted = $state.raw<KeptDraft<T> | undefined>();

  readonly draft: T | undefined = $derived(this.#states[this.#at]);
  readonly canUndo = $derived(this.#at > 0);
  readonly canRedo = $derived(this.#at < this.#states.length - 1);

  constructor(format: Format<T>) {
    this.format = format;
  }

  /** Brings back what is kept on this device and opens what was open. */
  restore(): void {
    const { drafts, open } = keptDrafts(this.format.kind, this.format.read);
    this.drafts = drafts;
    const last = drafts.find(({ id }) => id === open) ?? drafts.at(-1);
    if (last) this.open(last.id);
  }

  open(id: string): void {
    const found = this.drafts.find((one) => one.id === id);
    if (!found) return;
    this.id = id;
    this.#states = [found.draft];
    this.#at = 0;
    this.#typing = undefined;
    this.message = '';
    keepOpen(this.format.kind, id);
  }

  /** Puts a new draft beside the others and opens it. */
  add(draft: T): void {
    const id = freshId();
    this.drafts = [...this.drafts, { id, draft }];
    this.open(id);
    this.#keep();
  }

  /**
   * Changes the open draft and keeps it.
   * @param field where the change is typed: what follows in the same field is undone with it
   */
  change(change: Partial<T>, field?: string): void {
    const { draft } = this;
    if (!draft) return;
    const goesOn = field !== undefined && field === this.#typing && this.#at > 0;
    const before = this.#states.slice(0, goesOn ? this.#at : this.#at + 1);
    this.#states = [...before, { ...draft, ...change }].slice(-DEPTH);
    this.#at = this.#states.length - 1;
    this.#typing = field;
    this.message = '';
    this.#keep();
  }

  /** Typing in a field has come to an end. */
  settle(): void {
    this.#typing = undefined;
  }

  undo(): void {
    if (this.canUndo) this.#goTo(this.#at - 1);
  }

  redo(): void {
    if (this.canRedo) this.#goTo(this.#at + 1);
  }

  /** Deletes the open draft; `bringBack` undoes it. */
  delete(): void {
    const gone = this.drafts.find(({ id }) => id === this.id);
    if (!gone) return;
    this.deleted = gone;
    forgetDraft(this.format.kind, gone.id);
    this.drafts = this.drafts.filter(({ id }) => id !== gone.id);
    const next = this.drafts.at(-1);
    if (next) this.open(next.id);
    else {
      this.id = '';
      this.#states = [];
      this.#at = 0;
    }
    this.message = `“${this.format.nameOf(gone.draft)}” is deleted.`;
  }

  bringBack(): void {
    const { deleted } = this;
    if (!deleted) return;
    this.deleted = undefined;
    this.drafts = [...this.drafts, deleted];
    this.open(deleted.id);
    this.#keep();
  }

  /** Another window has changed a draft: where it is the open one, its change is one more step, which undo takes back. */
  changedElsewhere(key: string | null): void {
    const id = draftOfKey(this.format.kind, key);
    const draft = id === undefined ? undefined : keptDraft(this.format.kind, id, this.format.read);
    if (id === undefined || draft === undefined) return;
    if (!this.drafts.some((one) => one.id === id)) this.drafts = [...this.drafts, { id, draft }];
    this.drafts = this.drafts.map((one) => (one.id === id ? { id, draft } : one));
    if (id !== this.id) return;
    this.#states = [...this.#states.slice(0, this.#at + 1), draft].slice(-DEPTH);
    this.#at = this.#states.length - 1;
    this.#typing = undefined;
    this.message = 'This draft was changed in another window. Undo brings back what stood here.';
  }

  #goTo(at: number): void {
    this.#at = at;
    this.#typing = undefined;
    this.message = '';
    this.#keep();
  }

  #keep(): void {
    const { draft, id } = this;
    if (!draft) return;
    this.drafts = this.drafts.map((one) => (one.id === id ? { id, draft } : one));
    this.kept = keepDraft(this.format.kind, { id, draft });
    keepOpen(this.format.kind, id);
  }
}

/** Undo and redo by keyboard, for a whole page. In a field too: what was typed is a step of the draft's own. */
export function undoKeys(desk: Pick<Desk<object>, 'undo' | 'redo'>): (event: KeyboardEvent) => void {
  return (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) desk.redo();
    else desk.undo();
  };
}
