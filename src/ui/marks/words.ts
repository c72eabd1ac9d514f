import type { SlotState } from '../../course/coursework/outcome.ts';
import type { Entry } from '../../course/marks/book.ts';
import type { Flag } from '../../course/marks/flag.ts';

/** A learner as lists name them: the code, and the name where there is one. */
export const nameOf = ({ names }: Pick<Entry, 'names'>): string => names.join(' / ');

/** A slot in the table: a sign, how many goes, and the same in words. */
export function cellOf(
  { outcome, turns }: Entry,
  slot: string,
): { state: SlotState; sign: string; says: string } {
  const state = outcome.states.get(slot) ?? 'open';
  const goes = turns.filter((turn) => turn.slot === slot).length;
  const first =
    turns.filter((turn) => turn.slot === slot).findIndex(({ marked, counts }) => marked.right && counts) + 1;
  switch (state) {
    case 'right':
      return {
        state,
        sign: first > 1 ? `✓${first}` : '✓',
        says: first > 1 ? `right at go ${first}` : 'right at once',
      };
    case 'open':
      return { state, sign: '–', says: 'not tried' };
    case 'tried':
      return { state, sign: `✕${goes}`, says: `not right yet, ${goes} of its goes used` };
    case 'lost':
      return { state, sign: `✕${goes}`, says: `not right, no go left` };
  }
}

export const heavy = (flags: readonly Flag[]): Flag[] => flags.filter(({ weight }) => weight !== 'weak');

export const WEIGHT: Readonly<Record<Flag['weight'], string>> = {
  strong: 'Look first',
  look: 'Worth a question',
  weak: 'Little by itself',
};

const stampFormat = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});
/** “3 Mar, 10:15”, in this device's time zone. @param at milliseconds since 1970 */
export const stamp = (at: number): string => stampFormat.format(at);
