/** A title whose compound words stay on one line: `three-port` is one word to the eye. */
export function unbroken(title: string): string {
  return title.replace(/(\w)-(?=\w)/g, '$1\u2011');
}
