/**
 * Address of a page of this site, wherever the site is put.
 * @param path from the site's root, with its leading slash: `/lessons/`
 * @param base the folder the site lives in; Astro's own unless told
 * @param named whether the address of a folder names its file, as in packages: a learning platform may serve files only
 */
export function href(
  path: string,
  base: string = import.meta.env.BASE_URL,
  named: boolean = import.meta.env.PUBLIC_FOR_PACKAGES === '1',
): string {
  const address = `${base.replace(/\/+$/, '')}/${path.replace(/^\/+/, '')}`;
  return named ? address.replace(/\/(?=$|[?#])/, '/index.html') : address;
}
