import { quote } from './error.ts';

/** A place in parsed data: `['wires', 3, 1]` is `wires[3][1]`; a name that is not plain goes in quotes. */
export function placeAt(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'top level';
  let place = '';
  for (const key of path) {
    if (typeof key === 'number') place += `[${key}]`;
    else if (/^[A-Za-z][\w-]*$/.test(String(key)) && String(key).length <= 60)
      place += `${place && '.'}${String(key)}`;
    else place += `[${quote(String(key))}]`;
  }
  return place;
}

/** A place in text, counted from 1. `offset` is in UTF-16 units, as in a string. */
export function lineColumn(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return `line ${line}, column ${offset - before.lastIndexOf('\n')}`;
}
