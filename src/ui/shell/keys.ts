import { href } from './href.ts';

/** Whether a key press is meant for something to type or choose in. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable]') !== null;

const OFF = 'slash-off';

/** Whether the learner wants the key left alone (WCAG 2.2, criterion 2.1.4). */
export function slashIsOff(): boolean {
  try {
    return localStorage.getItem(OFF) !== null;
  } catch {
    return false;
  }
}

/** Keeps the choice on this device; false when the browser will not. */
export function keepSlash(isOn: boolean): boolean {
  try {
    if (isOn) localStorage.removeItem(OFF);
    else localStorage.setItem(OFF, '1');
    return true;
  } catch {
    return false;
  }
}

/** `/` leads to the search box, from any page; on the search page it moves the focus there. It can be switched off. */
export function listen(): void {
  document.addEventListener('keydown', (event) => {
    if (event.key !== '/' || event.defaultPrevented || isTyping(event.target)) return;
    if (event.ctrlKey || event.metaKey || event.altKey || slashIsOff()) return;
    event.preventDefault();
    const box = document.querySelector<HTMLInputElement>('#q');
    if (box) box.focus();
    else location.assign(href('/search/#q'));
  });
}
