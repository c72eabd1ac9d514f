const shown = (term: Element): boolean => {
  const tip = term.querySelector('.tip');
  return tip !== null && getComputedStyle(tip).visibility === 'visible';
};

const termOf = (event: Event): Element | null =>
  event.target instanceof Element ? event.target.closest('.gloss') : null;

/**
 * Definitions show on hover and focus without any script (`styles/terms.css`). This adds what styles cannot do: Escape
 * puts them away until the term is met again, and the first tap of a finger shows the definition, the second follows
 * the link.
 */
export function explain(): void {
  let tapped: Element | null = null;

  document.addEventListener('keydown', ({ key }) => {
    if (key !== 'Escape') return;
    for (const term of document.querySelectorAll('.gloss:is(:hover, :focus-within)'))
      term.classList.add('shut');
  });
  for (const leaving of ['focusout', 'pointerout'] as const)
    document.addEventListener(leaving, (event) => {
      const term = termOf(event);
      const goal = event.relatedTarget;
      if (!(goal instanceof Node && term?.contains(goal))) term?.classList.remove('shut');
    });
  document.addEventListener('pointerdown', (event) => {
    const term = event.pointerType === 'touch' ? termOf(event) : null;
    tapped = term && !shown(term) ? term : null;
  });
  document.addEventListener('click', (event) => {
    const term = termOf(event);
    const link = term?.querySelector('a');
    if (!link || term !== tapped) return;
    event.preventDefault();
    link.focus();
  });
}
