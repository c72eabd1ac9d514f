import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import { FileError } from './error.ts';
import { placeAt } from './place.ts';

/** A place in a YAML file: the line, from 1, and the path as the file itself has it. */
export interface Spot {
  readonly line: number;
  readonly path: readonly PropertyKey[];
}

/** A place as it stands in messages, back as a path; the inverse of `placeAt`. What cannot be read ends it. */
export function pathOf(place: string): PropertyKey[] {
  const path: PropertyKey[] = [];
  let rest = place === 'top level' ? '' : place;
  for (;;) {
    const [whole, name, index, quoted] =
      /^\.?([A-Za-z][\w-]*)|^\[(\d+)\]|^\[("(?:[^"\\]|\\.)*")\]/.exec(rest) ?? [];
    if (whole === undefined) return path;
    if (name !== undefined) path.push(name);
    else if (index !== undefined) path.push(Number(index));
    else if (quoted !== undefined) {
      // A name that was cut, or has characters that were spelt out, is not found again.
      if (/…"$|\\u\{/.test(quoted)) return path;
      path.push(JSON.parse(quoted) as string);
    }
    rest = rest.slice(whole.length);
  }
}

interface Step {
  readonly path: readonly PropertyKey[];
  /** The key, or the thing itself in a list. */
  readonly at: Node | undefined;
  readonly node: unknown;
}

/** One step down: a key of a map, or the so-manieth of a list. */
function down(node: unknown, key: PropertyKey): Step | undefined {
  if (isSeq(node) && typeof key === 'number') {
    const item = node.items[key] as Node | undefined;
    return item && { path: [key], at: item, node: item };
  }
  if (!isMap(node)) return undefined;
  const pair = node.items.find(({ key: own }) => isScalar(own) && String(own.value) === String(key));
  return pair && { path: [key], at: pair.key as Node, node: pair.value };
}

/**
 * A wire of a landing map: messages count the wires as they come, one for each lead, and name their ends 0 (the lead) and
 * 1 (where it is landed).
 */
function landed(node: unknown, wire: number, end: PropertyKey | undefined): Step | undefined {
  if (!isMap(node)) return undefined;
  let left = wire;
  for (const { key, value } of node.items) {
    const leads = isSeq(value) ? value.items : [];
    const name = isScalar(key) ? String(key.value) : '';
    const lead = leads[left] as Node | undefined;
    if (lead && end === 1) return { path: [name], at: key as Node, node: undefined };
    if (lead) return { path: [name, left], at: lead, node: undefined };
    left -= leads.length;
  }
  return undefined;
}

/** Follows a path as far as the document goes. */
function follow(root: unknown, path: readonly PropertyKey[]): Step {
  let spot: Step = { path: [], at: undefined, node: root };
  for (const [k, key] of path.entries()) {
    const next = down(spot.node, key);
    if (next) {
      spot = { path: [...spot.path, ...next.path], at: next.at ?? spot.at, node: next.node };
      continue;
    }
    const wire = typeof key === 'number' ? landed(spot.node, key, path[k + 1]) : undefined;
    if (wire) return { ...wire, path: [...spot.path, ...wire.path] };
    // A key that is not there: the message is about what should hold it.
    return { ...spot, path: [...spot.path, ...path.slice(k)] };
  }
  return spot;
}

/**
 * Finds places of YAML (or JSON) text. Of what is not there, the line of what should hold it; where a key is not one of
 * those known, the line of that key.
 */
export function lineFinder(text: string): (place: string, key?: string) => Spot {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, prettyErrors: false });
  return (place, key) => {
    const { at: spot, path, node } = follow(document.contents, pathOf(place));
    const at = (key === undefined ? undefined : down(node, key)?.at) ?? spot;
    const offset = (at ?? (document.contents as Node | null))?.range?.[0] ?? 0;
    return { line: counter.linePos(offset).line, path };
  };
}

/** YAML between lines of --- at the head of a text, and how many lines stand before it. */
function yamlIn(text: string): { readonly yaml: string; readonly before: number } {
  const [, head] = /^---\n([\s\S]*?)\n---\n/.exec(text) ?? [];
  return head === undefined ? { yaml: text, before: 0 } : { yaml: head, before: 1 };
}

/**
 * A trouble with the line that it is about, `job.yaml:12: gives.wires["strip/1"][0]: expected …`.
 * @param text of the file: YAML, JSON, or a lesson with YAML at its head
 */
export function withLine(error: FileError, text: string): FileError {
  if (error.line !== undefined) return error;
  const { file, place, expected, found } = error;
  const { yaml, before } = yamlIn(text);
  const [, line, column] = /^line (\d+), column (\d+)$/.exec(place) ?? [];
  if (line !== undefined)
    return new FileError({ file, line: Number(line) + before, place: `column ${column}`, expected, found });
  // A message about a key that nobody knows has the key as what was found.
  const key = expected.startsWith('one of ') && /^"[^"\\]*"$/.test(found) ? found.slice(1, -1) : undefined;
  const spot = lineFinder(yaml)(place, key);
  return new FileError({ file, line: spot.line + before, place: placeAt(spot.path), expected, found });
}
