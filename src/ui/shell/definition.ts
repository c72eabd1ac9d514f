/** How often each page has asked, so that every definition on it has an id of its own. */
const counts = new WeakMap<object, number>();

/**
 * An id for the next definition on a page.
 * @param page stands for the page: its request
 */
export function nextId(page: object): string {
  const count = (counts.get(page) ?? 0) + 1;
  counts.set(page, count);
  return `says-${count}`;
}
