import type { Action } from './keys.ts';
import type { Show } from './show.svelte.ts';

/** Pixels that a finger goes to the side for a swipe. */
const SWIPE = 50;

/** The smallest thing with a name under a point of the screen. */
function namedAt(screen: Element, x: number, y: number): string | undefined {
  const hits = [...screen.querySelectorAll('.panes [data-spot]')].flatMap((element) => {
    const box = element.getBoundingClientRect();
    const inside = x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
    return inside ? [{ name: element.getAttribute('data-spot') ?? '', size: box.width * box.height }] : [];
  });
  return hits.sort((a, b) => a.size - b.size)[0]?.name;
}

/**
 * What a pointer does on the screen: a swipe is the next step or the one before, a mouse moves a drawing that is larger
 * than its window, the spotlight follows it or is put where it presses. Keys do all of it as well.
 */
export function gestures(show: Show, act: (action: Action) => void, stir: () => void) {
  return (screen: Element): (() => void) => {
    let from: readonly [number, number] | undefined;
    const done = () => {
      from = undefined;
    };
    const down = (event: PointerEvent) => {
      stir();
      if (show.tool === 'none' && event.isPrimary) from = [event.clientX, event.clientY];
    };
    const move = (event: PointerEvent) => {
      stir();
      const { clientX: x, clientY: y } = event;
      if (show.light === 'pointer') {
        const box = screen.getBoundingClientRect();
        show.pointer = [x - box.left - screen.clientLeft, y - box.top - screen.clientTop];
      }
      if (!from || event.pointerType !== 'mouse' || event.buttons !== 1) return;
      show.pan = [show.pan[0] + x - from[0], show.pan[1] + y - from[1]];
      from = [x, y];
    };
    const up = (event: PointerEvent) => {
      const start = from;
      done();
      if (!start || event.pointerType === 'mouse') return;
      const [dx, dy] = [event.clientX - start[0], event.clientY - start[1]];
      if (Math.abs(dx) > SWIPE && Math.abs(dx) > 2 * Math.abs(dy)) act(dx < 0 ? 'next' : 'back');
    };
    const leave = () => {
      done();
      show.pointer = undefined;
    };
    const click = (event: MouseEvent) => {
      if (show.light !== 'chosen' || show.tool !== 'none') return;
      const name = namedAt(screen, event.clientX, event.clientY);
      if (name) show.choose(name);
    };
    const heard = [
      ['pointerdown', down],
      ['pointermove', move],
      ['pointerup', up],
      ['pointercancel', done],
      ['pointerleave', leave],
      ['click', click],
    ] as const;
    for (const [type, listener] of heard) screen.addEventListener(type, listener as EventListener);
    return () => {
      for (const [type, listener] of heard) screen.removeEventListener(type, listener as EventListener);
    };
  };
}
