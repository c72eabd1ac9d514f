/*
  Where the learner is on the site, as a path from its root: a platform serves the site from an address that nobody
  knows beforehand, with or without the names of index files.
*/

const INDEX = /index\.html$/;

/**
 * The path of a page: `/lessons/x/#hash`.
 * @param address of the page
 * @param root address of the site's home page
 * @returns undefined for a page of another site
 */
export function pathIn(address: string, root: string): string | undefined {
  const page = new URL(address);
  const home = new URL(root);
  const folder = home.pathname.replace(INDEX, '').replace(/\/*$/, '/');
  if (page.origin !== home.origin || !page.pathname.startsWith(folder)) return undefined;
  return `/${page.pathname.slice(folder.length).replace(INDEX, '')}${page.hash}`;
}

const isPath = (text: string): boolean => /^\/(?!\/)[a-z0-9/_-]*(#.*)?$/i.test(text) && !text.includes('..');

/** Parts of a coursework's address that the package knows anyway. */
const GIVEN = ['c', 'code', 'name', 'sitting'];
const COURSEWORK = '/coursework/';

/** A path as a bookmark of at most so many characters: what does not fit is left out, its hash first. */
export function bookmarkOf(path: string, most: number): string {
  const [page = '/', hash = ''] = splitAt(path);
  const kept =
    page === COURSEWORK
      ? hash
          .split('&')
          .filter((part) => !GIVEN.includes(part.split('=')[0] ?? ''))
          .join('&')
      : hash;
  const whole = kept ? `${page}#${kept}` : page;
  if (whole.length <= most) return whole;
  return page.length <= most ? page : '/';
}

function splitAt(path: string): [string, string] {
  const at = path.indexOf('#');
  return at < 0 ? [path, ''] : [path.slice(0, at), path.slice(at + 1)];
}

/**
 * The path to open first.
 * @param bookmark as the platform kept it: anything
 * @param start where a learner begins; of a coursework with its hash
 */
export function startPath(bookmark: string, start: string): string {
  // Launch inside of launch would never end.
  if (!isPath(bookmark) || bookmark.startsWith('/launch')) return start;
  const [page, hash] = splitAt(bookmark);
  const [startPage, startHash] = splitAt(start);
  if (page !== startPage || startHash === '') return bookmark;
  return `${page}#${hash ? `${startHash}&${hash}` : startHash}`;
}
