import type { Check } from './value.ts';

/** An element of a standard's data model: who may do what with it, and what may stand there. */
export interface DataElement {
  readonly access: 'read' | 'write' | 'both';
  readonly check?: Check;
}

/** The elements that are used here, by name; `n` stands for a number: `cmi.interactions.n.id`. */
export type Model = Readonly<Record<string, DataElement>>;

export const read: DataElement = { access: 'read' };
export const write = (check: Check): DataElement => ({ access: 'write', check });
export const both = (check: Check): DataElement => ({ access: 'both', check });

const nameOf = (element: string): string => element.replace(/\.\d+(?=\.|$)/g, '.n');

/** Why an element may not be read; undefined when it may. */
export function whyNotRead(model: Model, element: string): string | undefined {
  const found = model[nameOf(element)];
  if (!found) return `${element}: expected an element of the standard`;
  return found.access === 'write' ? `${element}: can be written only` : undefined;
}

/** Why a value may not be written to an element; undefined when it may. */
export function whyNotWrite(model: Model, element: string, value: string): string | undefined {
  const found = model[nameOf(element)];
  if (!found) return `${element}: expected an element of the standard`;
  if (found.access === 'read') return `${element}: can be read only`;
  const expected = found.check?.(value);
  return expected === undefined ? undefined : `${element}: expected ${expected}`;
}
