import type { Desk } from './desk.svelte.ts';

/** Lets a drawing be pointed at: a click lights the conductor under it, arrow keys go from one to the next. */
export function pointer(desk: Desk) {
  return (svg: Element): (() => void) => {
    const click = (event: Event): void => {
      const net = (event.target as Element).closest('[data-net]')?.getAttribute('data-net');
      desk.point(net == null ? undefined : Number(net));
    };
    const key = (event: Event): void => {
      const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1, Home: -1e6, End: 1e6 };
      const { key: name } = event as KeyboardEvent;
      if (name in by) desk.move(by[name as keyof typeof by]);
      else if (name === 'Escape') desk.point(undefined);
      else return;
      event.preventDefault();
    };
    svg.addEventListener('click', click);
    svg.addEventListener('keydown', key);
    return () => {
      svg.removeEventListener('click', click);
      svg.removeEventListener('keydown', key);
    };
  };
}
