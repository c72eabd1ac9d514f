/** A step on the way to a page. The last one is the page itself and has no address. */
export interface Crumb {
  name: string;
  /** From the site's root, with its leading slash. */
  to?: string;
}
