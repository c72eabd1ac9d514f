import type { FileError } from '../../files/error.ts';

/** What is wrong with a draft: where in the file, and what was expected there. */
export interface Trouble {
  /** As messages of the check name it: `gives.wires["strip/1"][0]`. */
  readonly place: string;
  readonly says: string;
}

/** The words of the check, as a sentence beside a field. */
export const troubleOf = ({ place, expected, found }: FileError): Trouble => ({
  place,
  says:
    found === 'nothing' || found === '""' ? `Expected ${expected}.` : `Expected ${expected}; found ${found}.`,
});

/** Whether a place is the one of a field, or inside it: `brief`, `tasks[2]` has `tasks[2].pass`. */
export const isWithin = (place: string, field: string): boolean =>
  place === field || place.startsWith(`${field}.`) || place.startsWith(`${field}[`);
