import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import type { Verdict } from '../../engine/diagnose/judge.ts';

/** What a visit is made under when it counts: in a coursework it is kept with the coursework, and help is limited. */
export interface VisitTerms {
  /** How many of the three training wheels may be on at any time of the visit. */
  readonly helps: number;
  /** Whether what it was, and the way to it, is told after the visit: not while the same fault is still to be found. */
  readonly tells: boolean;
  /** Keeps the visit in place of what was kept of it before. Never rejects; false while this device keeps nothing. */
  readonly keep: (visit: KeptVisit) => Promise<boolean>;
  /** Called when the visit is over and judged, and again when it is looked at later. The verdict is undefined where it could not be judged. */
  readonly onjudged: (verdict: Verdict | undefined) => Promise<void>;
}
