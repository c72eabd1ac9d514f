/** The most places that are marked on one page. */
const MOST = 200;

/** Every stretch of text that is one of the words, as a range. */
export function rangesOf(root: Node, words: readonly string[]): Range[] {
  const wanted = new Set(words.map((word) => word.toLowerCase()));
  const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  const ranges: Range[] = [];
  for (let node = texts.nextNode(); node && ranges.length < MOST; node = texts.nextNode()) {
    if (node.parentElement?.closest('script, style, .tip')) continue;
    for (const { 0: word, index } of (node.nodeValue ?? '').matchAll(/[A-Za-z0-9]+/g)) {
      if (!wanted.has(word.toLowerCase())) continue;
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      ranges.push(range);
    }
  }
  return ranges;
}

/**
 * Marks on the page what a search found it by: the words after `hl=` in its address. The text itself is not touched. A
 * browser without highlights shows the page as it is.
 */
export function mark(root: Node | null = document.querySelector('main')): void {
  const words = new URLSearchParams(location.search).get('hl')?.split(' ').filter(Boolean) ?? [];
  if (!root || words.length === 0 || !('highlights' in CSS)) return;
  CSS.highlights.set('found', new Highlight(...rangesOf(root, words)));
}
