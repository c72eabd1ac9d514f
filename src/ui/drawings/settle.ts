/** What a drawing needs of its style to look the same outside the page. */
const KEPT = [
  'fill',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'text-decoration-line',
  'display',
  'stop-color',
];
/** What only the page needs. Names of gradients stay, as the drawing itself refers to them. */
const DROPPED = /^(class|role|tabindex|style|href|data-|aria-)/;

/** Writes the computed style of an element into its copy's attributes, and takes away what belongs to the page. */
export function settle(shown: Element, copy: Element): void {
  const style = getComputedStyle(shown);
  for (const name of KEPT) {
    const value = style.getPropertyValue(name);
    if (value) copy.setAttribute(name, value.replaceAll('"', "'"));
  }
  for (const { name } of [...copy.attributes]) if (DROPPED.test(name)) copy.removeAttribute(name);
  if (!(copy instanceof SVGGradientElement)) copy.removeAttribute('id');
  [...shown.children].forEach((child, k) => {
    const twin = copy.children[k];
    if (twin) settle(child, twin);
  });
}
