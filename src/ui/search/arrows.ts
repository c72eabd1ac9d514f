/**
 * Lets the arrow keys go through the results: down from the box to the first, up from the first back to the box; Home
 * and End to the ends.
 */
export function walk(box: HTMLInputElement, list: Element): void {
  const links = () => [...list.querySelectorAll<HTMLAnchorElement>('a[href]')];
  box.addEventListener('keydown', (event) => {
    const [first] = links();
    if (event.key !== 'ArrowDown' || !first) return;
    event.preventDefault();
    first.focus();
  });
  list.addEventListener('keydown', (event) => {
    if (!(event instanceof KeyboardEvent)) return;
    const all = links();
    const at = all.indexOf(document.activeElement as HTMLAnchorElement);
    const goal = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (at < 0 || goal === undefined) return;
    event.preventDefault();
    if (goal < 0) box.focus();
    else all[Math.min(goal, all.length - 1)]?.focus();
  });
}
