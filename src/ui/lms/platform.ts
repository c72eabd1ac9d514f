import type { Report } from './report.ts';

/** What a learning platform may be told in this session. */
export type Mode = 'normal' | 'browse' | 'review';

/** A session with a learning platform, whichever standard it speaks. No call throws. */
export interface Platform {
  /** Who the platform says the learner is. */
  readonly learner: { readonly id: string; readonly name: string };
  readonly mode: Mode;
  /** The share that the platform wants for a pass, 0 to 1; undefined where it leaves that to us. */
  readonly passMark: number | undefined;
  /** What an earlier session left: a path, and suspend data; empty when there was none. */
  readonly bookmark: string;
  readonly suspended: string;
  /** Whether an earlier session reported a pass, and its score, 0 to 1: neither is taken back. */
  readonly passed: boolean;
  readonly best: number;
  /** Characters that fit into suspend data and bookmark. */
  readonly room: { readonly suspend: number; readonly bookmark: number };
  /** Where to go when the learner leaves; undefined where the window is closed or stays. */
  readonly back: string | undefined;
  /** Tells the platform how things stand; resolves to what went wrong, in words. What was not taken is told again next time. */
  readonly report: (report: Report) => Promise<readonly string[]>;
  /**
   * Tells it for the last time and ends the session, before anything is waited for; a second call does nothing. Without a
   * report nothing but the time is told, and what stands there stays. Resolves to what went wrong.
   */
  readonly end: (report?: Report) => Promise<readonly string[]>;
}

/** Why there is no session. */
export interface NoPlatform {
  readonly problem: string;
}
