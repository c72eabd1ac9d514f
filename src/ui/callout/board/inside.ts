import type { Part } from '../../../engine/model/system.ts';
import type { VisitDesk } from '../desk.svelte.ts';
import type { LandedCore } from './seen.ts';

/** What an enclosure is drawn from. */
export interface InsideProps {
  readonly desk: VisitDesk;
  readonly part: Part;
  /** Cores by the terminal that they are landed on. */
  readonly landed: ReadonlyMap<string, readonly LandedCore[]>;
  /** The terminal that Tab comes to. */
  readonly home: string | undefined;
  readonly onhome: (id: string) => void;
}
