import { posix } from 'node:path';
import { engineOrder, impureGlobals, layers, lineCeiling, markupSinks } from './order.ts';
import { type Import, type Mention, read } from './read.ts';

/** A broken rule: where it is, and what was expected there. */
export type Complaint = { readonly file: string; readonly line: number; readonly says: string };

/** Markup made from a string. A script of our own, written into the page as it stands, is not that. */
const markup = /\{@html\b|(?<!<script is:inline )\bset:html\b/;

/** A path under `src/` as its layer and, inside a layer, its first folder: `engine/parts/pump.ts` → engine, parts. */
function placeOf(path: string): { layer: string; folder: string } {
  const [first = '', second = '', third] = path.split('/');
  if (second === '') return { layer: 'pages', folder: '' };
  if (first === 'files' && second === 'site') return { layer: 'site', folder: '' };
  if (first === 'ui' && path.endsWith('.astro')) return { layer: 'layouts', folder: '' };
  return { layer: first, folder: third === undefined ? second.replace(/\.ts$/, '') : second };
}

/** The row of the engine's order; a file right in the engine that is named after no row stands above them all. */
function rank(path: string): number {
  const row = engineOrder.findIndex((names) => names.includes(placeOf(path).folder));
  return row < 0 ? engineOrder.length : row;
}

function engineRule(from: string, to: string): string | undefined {
  const here = placeOf(from).folder;
  const there = placeOf(to).folder;
  if (here === there) {
    // One part knows nothing of another: the list of them all is the only file that sees more than one.
    const isPart = here === 'parts' && posix.basename(from) !== 'index.ts';
    return isPart ? 'a part imports the part-kind types only, not another part' : undefined;
  }
  if (rank(to) < rank(from)) return undefined;
  const before = engineOrder.slice(0, rank(from)).flat();
  return `engine/${here} imports from ${before.length > 0 ? before.join(', ') : 'nothing else'}, not engine/${there}`;
}

function importRule(from: string, { name: specifier, typesOnly }: Import): string | undefined {
  const here = placeOf(from).layer;
  const layer = layers[here];
  if (!layer) return undefined;
  if (specifier.startsWith('.')) {
    const to = posix.join(posix.dirname(from), specifier);
    if (to.startsWith('../')) {
      // Data and package facts may come from outside src/, but only where pages are made.
      return layer.node ? undefined : `src/${here} imports nothing from outside src/`;
    }
    const there = placeOf(to).layer;
    if (to.endsWith('.css') && layer.packages === 'any') return undefined;
    if (there === here) return here === 'engine' ? engineRule(from, to) : undefined;
    if (layer.layers.includes(there)) return undefined;
    // What the browser shows may have its shape named where the site is built.
    if (here === 'ui' && there === 'site' && typesOnly) return undefined;
    return `src/${here} imports from ${layer.layers.join(', ') || 'itself alone'}, not src/${there}`;
  }
  if (specifier.startsWith('node:')) return layer.node ? undefined : `src/${here} imports nothing of Node's`;
  if (layer.packages === 'any') return undefined;
  const isAllowed = layer.packages.some((name) => specifier === name || specifier.startsWith(`${name}/`));
  return isAllowed
    ? undefined
    : `src/${here} imports ${layer.packages.join(' and ') || 'no packages'}, not ${specifier}`;
}

/**
 * Judges one source file.
 * @param path the file's path under `src/`, with forward slashes
 * @param text the file's text
 * @returns what is wrong with it, in the order of its lines
 */
export function judge(path: string, text: string): readonly Complaint[] {
  const complaints: Complaint[] = [];
  const complain = (line: number, says: string) => complaints.push({ file: `src/${path}`, line, says });
  const { layer, folder } = placeOf(path);
  const reading = read(path, text);

  if (!layers[layer])
    complain(1, `a folder of src/ is one of ${Object.keys(layers).join(', ')}, not ${layer}`);
  if (layer === 'engine' && path.split('/').length > 2 && rank(path) === engineOrder.length) {
    complain(1, `a folder of src/engine/ is one of ${engineOrder.flat().join(', ')}, not ${folder}`);
  }
  for (const imported of reading.imports) {
    const says = importRule(path, imported);
    if (says) complain(imported.line, says);
  }
  const flag = (mentions: readonly Mention[], banned: ReadonlySet<string>, why: string) => {
    for (const { name, line } of mentions) if (banned.has(name)) complain(line, `${why}, not ${name}`);
  };
  if (layers[layer]?.pure)
    flag(reading.globals, impureGlobals, `src/${layer} is handed the time, chance and storage`);
  flag(reading.members, markupSinks, 'text goes into a page as text');
  for (const [index, words] of text.split('\n').entries()) {
    if (markup.test(words)) complain(index + 1, 'text goes into a page as text, not {@html} or set:html');
  }
  const lines = text.trimEnd().split('\n').length;
  if (lines > lineCeiling) complain(lines, `a source file has at most ${lineCeiling} lines, not ${lines}`);
  return complaints.sort((a, b) => a.line - b.line);
}
