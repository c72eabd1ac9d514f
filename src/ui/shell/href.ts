/**
 * Address of a page of this site, wherever the site is put.
 * @param path from the site's root, with its leading slash: `/lessons/`
 * @param base the folder the site lives in; Astro's own unless told
 */
export function href(path: string, base: string = import.meta.env.BASE_URL): string {
  return `${base.replace(/\/+$/, '')}/${path.replace(/^\/+/, '')}`;
}
