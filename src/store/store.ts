import type { KeptVisit } from '../course/callouts/kept-visit.ts';
import type { Sitting } from '../course/coursework/work.ts';
import type { Trial } from '../course/trial.ts';

/** What a learner has chosen or left off at; each may be absent. */
export interface Choices {
  /** Id of the route followed. */
  readonly route?: string;
  /** Day of the assessment, `2027-03-31`. */
  readonly assessment?: string;
  /** `off`: no worked steps are offered, whatever the mastery. */
  readonly help?: 'off';
  /** Where the learner was last: a path of this site, its name, and when (milliseconds since 1970). */
  readonly last?: { readonly path: string; readonly title: string; readonly at: number };
}

/** A question in hand: an answer begun and not yet given, by the place it stands in. */
export interface Draft {
  readonly place: string;
  readonly item: string;
  readonly answer: unknown;
  readonly at: number;
}

/** Something to tell the learner, in words; nothing is lost while it holds. */
export interface Trouble {
  readonly kind: 'blocked' | 'full' | 'newer' | 'waiting' | 'clock' | 'damaged';
  readonly says: string;
  /** What the learner can do about it. */
  readonly todo: string;
}

/** The learner's progress on this device. No call rejects: what cannot be kept is held in memory, and `trouble` says so. */
export interface Store {
  readonly trials: () => Promise<readonly Trial[]>;
  /** Adds answers; their time is put right when the clock has been set back. */
  readonly add: (...trials: readonly Trial[]) => Promise<void>;
  readonly choices: () => Promise<Choices>;
  /** Keeps these beside what was chosen before; of the same name the new one counts. */
  readonly choose: (choices: Choices) => Promise<void>;
  /** Takes choices back. */
  readonly forget: (...names: readonly (keyof Choices)[]) => Promise<void>;
  readonly draft: (place: string) => Promise<Draft | undefined>;
  readonly keepDraft: (draft: Draft) => Promise<void>;
  readonly dropDraft: (place: string) => Promise<void>;
  /** The latest visit to a callout, whether it is over or not. */
  readonly visit: (callout: string) => Promise<KeptVisit | undefined>;
  /** Keeps a visit; of those that are over, only the last 200 stay. */
  readonly keepVisit: (visit: KeptVisit) => Promise<void>;
  readonly dropVisit: (id: string) => Promise<void>;
  /** Every visit that is kept, the one touched last at the end. */
  readonly visits: () => Promise<readonly KeptVisit[]>;
  /** A coursework as a learner left it, by `sittingId`. */
  readonly sitting: (id: string) => Promise<Sitting | undefined>;
  /** Every sitting that is kept, the one touched last at the end. */
  readonly sittings: () => Promise<readonly Sitting[]>;
  /** Keeps a sitting in place of what was kept of it before: work that is kept already and not in it stays. */
  readonly keepSitting: (sitting: Sitting) => Promise<void>;
  readonly dropSitting: (id: string) => Promise<void>;
  /** Trouble now, the gravest first. */
  readonly troubles: () => readonly Trouble[];
  /** Called after a change of progress or trouble, in this tab or another; returns how to stop. */
  readonly onChange: (listener: () => void) => () => void;
  /** Milliseconds since 1970, never earlier than the latest trial. */
  readonly now: () => number;
}

/** What a device keeps of a learner, apart from the wirings and benches of their own. */
export interface Progress {
  readonly trials: readonly Trial[];
  readonly choices: Choices;
  readonly drafts: readonly Draft[];
  readonly visits: readonly KeptVisit[];
  readonly sittings?: readonly Sitting[];
}

/** A store as the progress page needs it. */
export interface KeptStore extends Store {
  /** Trials of one objective, found by the index. */
  readonly trialsOf: (objective: string) => Promise<readonly Trial[]>;
  readonly drafts: () => Promise<readonly Draft[]>;
  /**
   * Adds progress from elsewhere, such as a backup: each trial once, at its own time; of choices, drafts and
   * visits that are here too, those that are here stay unless the other was later.
   * @returns how many trials were new
   */
  readonly merge: (progress: Progress) => Promise<number>;
  /** Forgets everything. */
  readonly clear: () => Promise<void>;
  /** Lets go of the database; nothing is kept afterwards. */
  readonly close: () => void;
}
