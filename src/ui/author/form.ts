import { getContext, setContext } from 'svelte';
import { isWithin, type Trouble } from './trouble.ts';

/** What the fields of a form share: everything that is wrong, whether all of it is told yet, and who ends an undo step. */
export interface Form {
  readonly troubles: readonly Trouble[];
  /** Told to save: gaps count as well as slips. Before, a field that nobody has been in keeps quiet. */
  readonly all: boolean;
  readonly settle: () => void;
}

const KEY = Symbol('form');

export const setForm = (form: Form): Form => setContext(KEY, form);
export const getForm = (): Form => getContext<Form>(KEY);

/** What is wrong with a field. */
export const troublesAt = (form: Form, place: string, whole = false): readonly Trouble[] =>
  form.troubles.filter((trouble) => (whole ? isWithin(trouble.place, place) : trouble.place === place));

/** Takes the focus to the field that a place is about, or to the nearest thing around it. */
export function goToPlace(place: string): void {
  const fields = [...document.querySelectorAll<HTMLElement>('[data-place]')];
  const around = fields.filter((field) => isWithin(place, field.dataset.place ?? ''));
  const [nearest] = around.sort((a, b) => (b.dataset.place ?? '').length - (a.dataset.place ?? '').length);
  nearest?.focus();
  nearest?.scrollIntoView({ block: 'center' });
}
