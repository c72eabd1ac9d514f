import { createHash } from 'node:crypto';
import { posix } from 'node:path';

/**
 * The base that a site for packages is built with. No address begins like this by chance, so every one that was made
 * from the base can be found afterwards and made relative, whatever wrote it.
 */
export const BASE = '/~site~/';

/** From a file to the site's root: `./`, `../`, `../../`. */
const rootFrom = (file: string): string => '../'.repeat(file.split('/').length - 1) || './';

/** From a file to another one. */
function between(file: string, to: string): string {
  const way = posix.relative(posix.dirname(file), to);
  return way.startsWith('.') ? way : `./${way}`;
}

const hashOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`;

/** Pages: an address counts from the page. A script or a style inside one keeps its place in the page's policy. */
function relativePage(text: string, file: string): string {
  const root = rootFrom(file);
  const hashes: [string, string][] = [];
  const inside = /(<(script|style)\b[^>]*>)([^<]*(?:<(?!\/\2)[^<]*)*)(?=<\/\2>)/g;
  const page = text.replace(inside, (whole: string, tag: string, _kind: string, body: string) => {
    if (!body.includes(BASE)) return whole;
    const moved = body.replaceAll(BASE, root);
    hashes.push([hashOf(body), hashOf(moved)]);
    return tag + moved;
  });
  const renamed = hashes.reduce((now, [old, fresh]) => now.replaceAll(old, fresh), page);
  return renamed.replaceAll(BASE, root);
}

/** Styles: an address counts from the file that it stands in. */
const relativeStyle = (text: string, file: string): string => text.replaceAll(BASE, rootFrom(file));

/**
 * Scripts: a page anywhere in the site may run them, so an address is told from where the script itself is. What is
 * already made into one beside `import.meta.url`, as a worker's is, only has to count from there.
 */
function relativeScript(text: string, file: string): string {
  const literal = new RegExp(`(new URL\\()?([\`"'])${BASE}([^\`"'$]*)\\2`, 'g');
  return text.replace(literal, (_whole, made: string | undefined, _quote, path: string) => {
    const way = JSON.stringify(path === '' ? rootFrom(file) : between(file, path));
    // In brackets: in packed code the word before it may stand right against it.
    return made ? `${made}${way}` : `(new URL(${way},import.meta.url).href)`;
  });
}

const KINDS: Readonly<Record<string, (text: string, file: string) => string>> = {
  '.html': relativePage,
  '.css': relativeStyle,
  '.js': relativeScript,
};

/** Whether a file may hold addresses that count from the base. */
export const holdsAddresses = (file: string): boolean => /\.(?:html|css|js|mjs|json|svg|xml|txt)$/.test(file);

/**
 * A file of the site with every address made relative.
 * @param text what the file says
 * @param file its path from the site's root: `lessons/first/index.html`
 * @throws Error naming the file when an address stands where nothing here can make it relative
 */
export function relative(text: string, file: string): string {
  if (!text.includes(BASE)) return text;
  const made = KINDS[posix.extname(file)]?.(text, file) ?? text;
  const left = made.indexOf(BASE);
  if (left < 0) return made;
  const near = made.slice(Math.max(0, left - 40), left + 60);
  throw new Error(`${file}: expected addresses that can be made relative, found one here: ${near}`);
}
