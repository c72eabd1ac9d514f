/** The words of an MDX text, without its tags, imports, links' addresses and marks. */
export function plainText(mdx: string): string {
  return mdx
    .replace(/^(import|export) .*$/gm, '')
    .replace(/\{"([^"]*)"\}/g, '$1')
    .replace(/<\/?[A-Za-z][^>]*>/g, ' ')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/^\|[-| ]+\|$/gm, ' ')
    .replace(/^#+ /gm, '')
    .replace(/[*_`|]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
