import { existsSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Bytes of JavaScript, each file and inline script gzipped by itself. */
export interface Weight {
  /** Fetched as the page loads: its scripts, its islands, and all they import. */
  readonly atOnce: number;
  /** Fetched besides when an island that slept wakes. */
  readonly waking: number;
  /** Named in those files as well, and fetched only when somebody asks for it: workers, imports on demand. */
  readonly later: number;
  readonly files: readonly string[];
}

const gzip = (text: string): number => gzipSync(text, { level: 9 }).length;
const all = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map(([, found]) => found ?? '');

/** The opening tag of an island that sleeps until it is touched. */
const sleeping = /<astro-island\b[^>]*\bclient="touch"[^>]*>/g;
const urls = /\b(?:component|renderer|before-hydration)-url="([^"]+)"/g;

/** Site paths of the script files that a page's markup asks for as it loads. An island that waits for a touch asks later. */
export function filesOfPage(html: string): string[] {
  const awake = html.replace(sleeping, '');
  return [
    ...all(awake, /<script\b[^>]*\bsrc="([^"]+)"/g),
    ...all(awake, urls),
    ...all(awake, /<link\b[^>]*\brel="modulepreload"[^>]*\bhref="([^"]+)"/g),
  ];
}

/** Site paths of the script files of islands that are fetched when somebody touches them. */
export const filesOnTouch = (html: string): string[] =>
  [...html.matchAll(sleeping)].flatMap(([island]) => all(island, urls));

/** Code that stands in the page itself; data in script elements is none. */
export function inlineScripts(html: string): string[] {
  return [...html.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)]
    .filter(([, attributes]) => !/\bsrc=|type="(?!module|text\/javascript)/.test(attributes ?? ''))
    .map(([, , code]) => code ?? '')
    .filter((code) => code.trim() !== '');
}

/** Site paths that a script imports, and those of other scripts that it names. */
export function importsOf(code: string, path: string): { now: string[]; later: string[] } {
  const here = posix.dirname(path);
  const resolve = (name: string) => (name.startsWith('.') ? posix.join(here, name) : posix.join('/', name));
  const now = all(code, /\b(?:from|import)\s*["'`]([^"'`]+\.js)["'`]/g).map(resolve);
  const later = all(code, /["'`]([^"'`\s]+\.js)["'`]/g).map(resolve);
  return { now, later: later.filter((name) => !now.includes(name)) };
}

interface ScriptFile {
  readonly bytes: number;
  readonly now: readonly string[];
  readonly later: readonly string[];
}
/** By file: most pages share most of their scripts, and packing is what takes the time. */
const weighed = new Map<string, ScriptFile>();

function weighFile(site: string, path: string): ScriptFile {
  const file = join(site, path);
  const known = weighed.get(file);
  if (known) return known;
  const code = readFileSync(file, 'utf8');
  const found = { bytes: gzip(code), ...importsOf(code, path) };
  weighed.set(file, found);
  return found;
}

/** Weighs the scripts of a built page, given by its folder in the site: `jobs/unvented-three-port`. */
export function weighPage(site: string, page: string): Weight {
  const html = readFileSync(join(site, page, 'index.html'), 'utf8');
  const inline = inlineScripts(html);
  const found = new Map<string, ScriptFile>();
  const fetchAll = (paths: readonly string[]) => {
    for (const path of paths) {
      if (found.has(path) || !existsSync(join(site, path))) continue;
      const file = weighFile(site, path);
      found.set(path, file);
      fetchAll(file.now);
    }
  };
  const sum = () => [...found.values()].reduce((bytes, file) => bytes + file.bytes, 0);
  fetchAll([...filesOfPage(html), ...inline.flatMap((code) => importsOf(code, `/${page}/`).now)]);
  const files = [...found.keys()];
  const first = sum();
  fetchAll(filesOnTouch(html));
  const waking = sum() - first;
  for (const { later } of found.values()) fetchAll(later);
  return {
    atOnce: first + inline.reduce((bytes, code) => bytes + gzip(code), 0),
    waking,
    later: sum() - first,
    files,
  };
}
