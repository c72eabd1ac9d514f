import type { ClientDirective } from 'astro';
import { owned } from '../../store/owner.ts';
import { type Press, takePress } from './press.ts';

const wakers = ['pointerdown', 'focusin', 'keydown'] as const;
/** What tells that somebody is at the page, before they press anything. */
const stirs = [...wakers, 'pointermove', 'touchstart', 'wheel', 'scroll', 'dragenter'] as const;
const taken = ['click', 'keydown', 'change', 'submit'] as const;
/** Milliseconds to wait for an island that is still fetching what it shows. */
const PATIENCE = 15_000;

/** The way down to an element, as child numbers, to find its like again if waking made it anew. */
function wayTo(root: Element, element: Element): number[] {
  const way: number[] = [];
  for (let at = element; at !== root && at.parentElement; at = at.parentElement)
    way.unshift([...at.parentElement.children].indexOf(at));
  return way;
}

/** Whether the address names something in the island: `#live-1x=5` is a state of the circuit with the id `live-1x`. */
function isNamed(root: Element): boolean {
  const id = /^#([\w-]+)=/.exec(location.hash)?.[1];
  return id !== undefined && root.contains(document.getElementById(id));
}

/** Whether there is something to show that the server did not know: a state in the address, or what was kept under a name. */
function isCalledFor(kept: string): boolean {
  if (location.hash !== '' || location.search !== '') return true;
  try {
    return localStorage.getItem(owned(kept)) !== null;
  } catch {
    return false;
  }
}

const follow = (root: Element, way: readonly number[]): Element | undefined =>
  way.reduce<Element | undefined>((at, k) => at?.children[k], root);

/** Until nothing in the island says that it is busy. */
const settled = (root: Element): Promise<void> =>
  new Promise((done) => {
    const busy = () => root.querySelector('[aria-busy="true"]') !== null;
    if (!busy()) return done();
    const end = () => {
      clearTimeout(timer);
      watch.disconnect();
      done();
    };
    const timer = setTimeout(end, PATIENCE);
    const watch = new MutationObserver(() => {
      if (!busy()) end();
    });
    watch.observe(root, { subtree: true, childList: true, attributeFilter: ['aria-busy'] });
  });

/**
 * `client:touch`: an island sleeps as the server drew it until someone presses, focuses or types in it. Then it is
 * fetched, and what was done meanwhile is done again on the same elements, so that the first press counts. An island
 * that fetches more when it wakes marks itself `aria-busy="true"` while it does, and the press waits for it. An address
 * that names a state of something in it wakes it as well.
 *
 * With a name, as in `client:touch="switched-live/…"`, the island is the page: it wakes at any sign of somebody, and at
 * once when the address has a state or the device keeps something under that name.
 */
const touch: ClientDirective = (load, { value }, root) => {
  const kept = typeof value === 'string' ? value : undefined;
  const [from, signs] = kept === undefined ? ([root, wakers] as const) : ([window, stirs] as const);
  const presses: { press: Press; way: number[] }[] = [];
  const take = (event: Event) => {
    // What was done to the words around the controls needs no answer.
    const press = takePress(event);
    if (press) presses.push({ press, way: wayTo(root, press.target) });
  };
  const named = () => {
    if (isNamed(root) || (kept !== undefined && isCalledFor(kept))) void wake();
  };
  const wake = async () => {
    for (const type of signs) from.removeEventListener(type, wake, true);
    removeEventListener('hashchange', named);
    const hydrate = await load();
    const { activeElement } = document;
    const focused = activeElement && root.contains(activeElement) ? wayTo(root, activeElement) : undefined;
    await hydrate();
    // Listeners that come with effects are in place a moment later; what they fetch may take longer.
    await new Promise((done) => setTimeout(done));
    await settled(root);
    for (const type of taken) root.removeEventListener(type, take, true);
    if (focused && !root.contains(document.activeElement))
      (follow(root, focused) as HTMLElement | undefined)?.focus({ preventScroll: true });
    for (const { press, way } of presses) {
      const target = press.target.isConnected ? press.target : follow(root, way);
      if (target) press.again(target);
      // What one press changes is there before the next.
      await new Promise((done) => setTimeout(done));
    }
    root.setAttribute('data-awake', '');
  };
  for (const type of signs) from.addEventListener(type, wake, { capture: true, passive: true });
  for (const type of taken) root.addEventListener(type, take, true);
  addEventListener('hashchange', named);
  named();
};

export default touch;
