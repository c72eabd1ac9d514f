import type { Wire } from '../../engine/model/wiring.ts';

/** What a job is done under when it counts: in a coursework, judging uses up a go and help is limited. */
export interface Terms {
  /** How many of the three helps with a finding may be opened. */
  readonly helps: number;
  /** Beside the judge's button: what judging costs. */
  readonly says: string;
  /** Nothing counts any more: other right wirings may be looked at. */
  readonly over: boolean;
  /** Called with every wiring that was judged. */
  readonly onjudged: (wires: readonly Wire[], accepted: boolean) => void;
  /** Called when help is opened, with how many are open. */
  readonly onhelp: (open: number) => void;
}
