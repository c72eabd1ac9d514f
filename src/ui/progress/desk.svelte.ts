import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import type { Outline } from '../../course/outline.ts';
import { calibrationOf } from '../../course/progress/calibration.ts';
import { courseState } from '../../course/progress/course-state.ts';
import { timeOfDay } from '../../course/progress/day.ts';
import { measureOf } from '../../course/progress/measure.ts';
import { nextThing } from '../../course/progress/next.ts';
import type { Trial } from '../../course/trial.ts';
import { openStore } from '../../store/open.ts';
import type { Choices, KeptStore, Trouble } from '../../store/store.ts';
import { href } from '../shell/href.ts';

/** What the progress page shows: the log on this device, and all that follows from it. */
export class Desk {
  readonly store: KeptStore;
  readonly outline: Outline;
  trials = $state.raw<readonly Trial[]>([]);
  choices = $state.raw<Choices>({});
  visits = $state.raw<readonly KeptVisit[]>([]);
  troubles = $state.raw<readonly Trouble[]>([]);
  now = $state(0);

  readonly assessment = $derived(this.choices.assessment ? timeOfDay(this.choices.assessment) : undefined);
  readonly state = $derived.by(() => courseState(this.outline, this.trials, this.now, this.assessment));
  readonly next = $derived.by(() => {
    const route = this.outline.routes.find(({ id }) => id === this.choices.route);
    return nextThing(this.state, { route, last: this.choices.last?.path });
  });
  readonly calibration = $derived.by(() => calibrationOf(this.trials));
  readonly measure = $derived.by(() => measureOf(this.trials));

  constructor(store: KeptStore, outline: Outline) {
    this.store = store;
    this.outline = outline;
  }

  /** Reads everything anew. */
  async read(): Promise<void> {
    const { store } = this;
    const [trials, choices, visits] = await Promise.all([store.trials(), store.choices(), store.visits()]);
    [this.trials, this.choices, this.visits] = [trials, choices, visits];
    this.troubles = this.store.troubles();
    this.now = this.store.now();
  }
}

/** Opens the desk. Rejects when the outline of the course cannot be fetched. */
export async function openDesk(): Promise<Desk> {
  const outline = fetch(href('/course/outline.json')).then((answer) => {
    if (!answer.ok) throw new Error(`the course could not be fetched (${answer.status})`);
    return answer.json() as Promise<Outline>;
  });
  const desk = new Desk(await openStore(), await outline);
  await desk.read();
  return desk;
}
