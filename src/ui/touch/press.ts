/** What was done in an island before it woke: what it was done to, and how to do it again. */
export interface Press {
  readonly target: Element;
  readonly again: (target: Element) => void;
}

const modifiers = ['Tab', 'Shift', 'Control', 'Alt', 'Meta'];

function keyAgain(event: KeyboardEvent): Press['again'] {
  const { key, code, shiftKey, repeat } = event;
  return (target) =>
    target.dispatchEvent(
      new KeyboardEvent(event.type, { key, code, shiftKey, repeat, bubbles: true, cancelable: true }),
    );
}

function clickAgain({ clientX, clientY, detail, button, shiftKey }: MouseEvent): Press['again'] {
  const how = { clientX, clientY, detail, button, shiftKey, bubbles: true, cancelable: true, composed: true };
  return (target) => target.dispatchEvent(new MouseEvent('click', { ...how, view: window }));
}

/** A field keeps what was typed or chosen, even where waking put the first value back. */
function valueAgain(field: HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement): Press['again'] {
  const { value } = field;
  return (target) => {
    (target as typeof field).value = value;
    for (const type of ['input', 'change']) target.dispatchEvent(new Event(type, { bubbles: true }));
  };
}

/** What folds has folded by itself already; it must stay so, even where waking put it back as it was. */
function foldAgain(details: HTMLDetailsElement): Press {
  const open = !details.open;
  return {
    target: details,
    again: (target) => {
      (target as HTMLDetailsElement).open = open;
    },
  };
}

const isTyped = (target: Element): target is HTMLInputElement =>
  target.matches('select, textarea, input:not([type=checkbox], [type=radio])');

/**
 * Takes an event that came too early out of the page's hands, to be played later. A click or a form sent is stopped;
 * a key still moves the focus and types. Undefined where the event needs no script, or will come again by itself.
 */
export function takePress(event: Event): Press | undefined {
  const { target } = event;
  if (!(target instanceof Element)) return undefined;
  if (event.type === 'click') {
    // A link does its work without a script, and so does what folds.
    if (target.closest('a[href]')) return undefined;
    const folds = target.closest('summary')?.parentElement;
    if (folds instanceof HTMLDetailsElement) return foldAgain(folds);
    event.preventDefault();
    event.stopPropagation();
    return { target, again: clickAgain(event as MouseEvent) };
  }
  if (event.type === 'submit') {
    event.preventDefault();
    event.stopPropagation();
    return { target, again: (form) => (form as HTMLFormElement).requestSubmit() };
  }
  if (event instanceof KeyboardEvent) {
    const { key, ctrlKey, altKey, metaKey } = event;
    if (ctrlKey || altKey || metaKey || modifiers.includes(key) || isTyped(target)) return undefined;
    event.stopPropagation();
    return { target, again: keyAgain(event) };
  }
  return event.type === 'change' && isTyped(target) ? { target, again: valueAgain(target) } : undefined;
}
