/**
 * Makes everything on the page inert but one element, as a full screen leaves the rest in the order of the tab key.
 * @returns puts it all back
 */
export function alone(element: Element): () => void {
  const set: Element[] = [];
  for (let at: Element = element; at !== document.body && at.parentElement; at = at.parentElement)
    for (const other of at.parentElement.children) {
      if (other === at || other.hasAttribute('inert') || /^(SCRIPT|STYLE)$/.test(other.tagName)) continue;
      other.setAttribute('inert', '');
      set.push(other);
    }
  return () => {
    for (const other of set) other.removeAttribute('inert');
  };
}
