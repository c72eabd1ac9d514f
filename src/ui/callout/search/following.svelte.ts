import type { Step } from '../../../engine/diagnose/expert.ts';
import type { VisitDesk } from '../desk.svelte.ts';
import type { Left } from './messages.ts';
import { Searcher } from './searcher.ts';

/** The search that goes along with one visit: what was still possible at the door and after each entry. */
export class Following {
  readonly desk: VisitDesk;
  /** Whether the visit was still under way when this began, so that it ends on this page. */
  readonly fresh: boolean;
  /** At the door, then after each entry; shorter than the notebook while the search is behind. */
  history = $state.raw<readonly Left[]>([]);
  /** What a good engineer would do after so many entries. */
  advice = $state.raw<{ readonly after: number; readonly step: Step | undefined } | undefined>();
  /** Why the search stopped, in words. */
  trouble = $state('');
  #searcher: Searcher | undefined;
  #running: Promise<void> | undefined;

  constructor(desk: VisitDesk) {
    this.desk = desk;
    this.fresh = !desk.done;
  }

  readonly now: Left | undefined = $derived.by(() => this.history.at(-1));
  /** Whether it still works on what was done last. */
  readonly behind: boolean = $derived.by(() => this.history.length <= this.desk.entries.length);

  get searcher(): Searcher {
    this.#searcher ??= new Searcher();
    return this.#searcher;
  }

  /** Catches up with the notebook; asked again meanwhile, it goes on to the newest line. */
  follow(): Promise<void> {
    this.#running ??= this.#catchUp()
      .catch((error: unknown) => this.#fail(error))
      .finally(() => {
        this.#running = undefined;
      });
    return this.#running;
  }

  async #catchUp(): Promise<void> {
    const { desk, searcher } = this;
    if (this.history.length === 0) this.history = [await searcher.begin(desk.callout, desk.doubles)];
    for (;;) {
      const entry = desk.entries[this.history.length - 1];
      if (entry === undefined) return;
      this.history = [...this.history, await searcher.tell($state.snapshot(entry) as typeof entry)];
    }
  }

  /** Asks what a good engineer would do now, once the search has caught up. */
  async advise(): Promise<void> {
    await this.follow();
    const after = this.desk.entries.length;
    if (this.trouble || this.behind || this.advice?.after === after) return;
    try {
      const step = await this.searcher.next();
      if (after === this.desk.entries.length) this.advice = { after, step };
    } catch (error) {
      this.#fail(error);
    }
  }

  /** Ends the worker. Another one knows nothing of this search: it begins at the door. */
  stop(): void {
    const searcher = this.#searcher;
    this.#searcher = undefined;
    this.history = [];
    this.advice = undefined;
    searcher?.stop();
  }

  #fail(error: unknown): void {
    // What was stopped was meant to be.
    if (this.#searcher) this.trouble = error instanceof Error ? error.message : String(error);
  }
}

const known = new WeakMap<VisitDesk, Following>();

/** The one search that goes along with a desk. */
export function followingOf(desk: VisitDesk): Following {
  const following = known.get(desk) ?? new Following(desk);
  known.set(desk, following);
  return following;
}
