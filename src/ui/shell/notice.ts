/**
 * Says something at the foot of the page, over it, without moving what the learner is doing. One notice at a time: a new
 * one takes the place of the last. It stays until it is closed, or for a while when there is nothing to decide.
 * @param says the sentence
 * @param act what can be done about it: the words on the button, and what it does
 */
export function notify(says: string, act?: { name: string; run: () => void }): void {
  const box = document.querySelector('#notice');
  if (!box) return;
  const words = document.createElement('p');
  words.textContent = says;
  const close = button('Close', () => box.replaceChildren());
  const buttons = act ? [button(act.name, act.run, 'btn primary'), close] : [close];
  box.replaceChildren(words, ...buttons);
  if (act) return;
  setTimeout(() => {
    if (words.isConnected && !box.matches(':hover, :focus-within')) box.replaceChildren();
  }, 10_000);
}

function button(name: string, run: () => void, look = 'btn'): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = look;
  made.textContent = name;
  made.addEventListener('click', run);
  return made;
}
