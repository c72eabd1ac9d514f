import { href } from './href.ts';

/** Whether a key press is meant for something to type or choose in. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable]') !== null;

/** `/` leads to the search box, from any page; on the search page it moves the focus there. */
export function listen(): void {
  document.addEventListener('keydown', (event) => {
    if (event.key !== '/' || event.defaultPrevented || isTyping(event.target)) return;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const box = document.querySelector<HTMLInputElement>('#q');
    if (box) box.focus();
    else location.assign(href('/search/#q'));
  });
}
