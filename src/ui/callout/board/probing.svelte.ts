import type { Lead, Probes, VisitDesk } from '../desk.svelte.ts';
import { nearestSpot, type Point, type Spot } from './spots.ts';

/** A probe on its way in somebody's hand: where its tip is in the window, and the terminal it would go on. */
export interface Drag {
  readonly lead: Lead;
  readonly tip: Point;
  readonly over: string | undefined;
}

/** A pointer that has moved this far, px, is dragging. */
const FAR_ENOUGH = 6;
/** A finger hides what is under it: the tip of the probe stands this far above, px. */
const ABOVE_FINGER = 46;
/** Nearer than this to the top of the window or to the meter at its foot, px, the page moves under the hand. */
const EDGE = 56;
const SPEED = 9;

/** Every terminal that can be touched now, and where it is in the window. */
function spotsNow(): Spot[] {
  return [...document.querySelectorAll<HTMLElement>('.spot[data-terminal]')].map((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { id: element.dataset.terminal ?? '', x: left + width / 2, y: top + height / 2 };
  });
}

/** The hands with the two probes: a tap puts the one in hand, a drag carries one. */
export class Probing {
  readonly desk: VisitDesk;
  drag = $state.raw<Drag | undefined>();
  /** Where both probes were last, for going back there with another instrument. */
  last = $state.raw<readonly [string, string] | undefined>();
  /** A drag that has just ended: the click that follows it is no tap. */
  #dragged = false;

  constructor(desk: VisitDesk) {
    this.desk = desk;
  }

  /** The probe on a terminal. */
  leadOn(terminal: string): Lead | undefined {
    const at = this.desk.probes.indexOf(terminal);
    return at < 0 ? undefined : (at as Lead);
  }

  /** Puts the probe in hand on a terminal, or takes off the one that is there. */
  tap(terminal: string): void {
    if (this.#dragged) return;
    const lead = this.leadOn(terminal);
    if (lead === undefined) this.put(terminal, this.desk.lead);
    else this.desk.takeOff(lead);
  }

  /** Puts a probe on a terminal. With both on, the red one is in hand next: the black one stays on its reference. */
  put(terminal: string, lead: Lead): void {
    if (this.desk.probes[lead] === terminal) return;
    this.desk.place(terminal, lead);
    const both = pairOf(this.desk.probes);
    if (!both) return;
    this.last = both;
    this.desk.lead = 0;
  }

  /** Both probes back on the two terminals where they were last. */
  putBack(): void {
    if (!this.last) return;
    const [red, black] = this.last;
    this.put(red, 0);
    this.put(black, 1);
  }

  /** Whether there are two terminals to go back to, with their covers off and no probe on them. */
  get canPutBack(): boolean {
    return (
      this.last !== undefined &&
      !pairOf(this.desk.probes) &&
      this.last.every((terminal) => !this.desk.covered(this.desk.partAt(terminal)))
    );
  }

  /** Takes hold of a probe with a pointer; `ends` hears how it ended: a tap, or a drag. */
  grab(event: PointerEvent, lead: Lead): void {
    if (event.button !== 0 || this.desk.done) return;
    const element = event.currentTarget as HTMLElement;
    const start: Point = { x: event.clientX, y: event.clientY };
    const lift = event.pointerType === 'mouse' ? 0 : ABOVE_FINGER;
    let at = start;
    let frame = 0;
    this.#dragged = false;
    element.setPointerCapture(event.pointerId);

    const look = () => {
      const tip = { x: at.x, y: at.y - lift };
      this.drag = { lead, tip, over: nearestSpot(spotsNow(), tip) };
    };
    const creep = () => {
      const by = scrollFor(at, start);
      if (by !== 0) {
        scrollBy(0, by);
        look();
      }
      frame = requestAnimationFrame(creep);
    };
    const move = (now: PointerEvent) => {
      if (now.pointerId !== event.pointerId) return;
      at = { x: now.clientX, y: now.clientY };
      if (!this.drag && Math.hypot(at.x - start.x, at.y - start.y) < FAR_ENOUGH) return;
      if (!this.drag) {
        this.#dragged = true;
        frame = requestAnimationFrame(creep);
      }
      look();
    };
    const end = (now: PointerEvent | KeyboardEvent) => {
      if (now instanceof KeyboardEvent ? now.key !== 'Escape' : now.pointerId !== event.pointerId) return;
      cancelAnimationFrame(frame);
      for (const kind of ['pointerup', 'pointercancel'] as const) element.removeEventListener(kind, end);
      element.removeEventListener('pointermove', move);
      removeEventListener('keydown', end);
      const drag = this.drag;
      this.drag = undefined;
      // The click of this very press comes before the next task.
      setTimeout(() => {
        this.#dragged = false;
      });
      if (!drag || now.type !== 'pointerup') return;
      if (drag.over) this.put(drag.over, lead);
      else this.desk.takeOff(lead);
    };
    element.addEventListener('pointermove', move);
    for (const kind of ['pointerup', 'pointercancel'] as const) element.addEventListener(kind, end);
    addEventListener('keydown', end);
  }
}

const pairOf = ([red, black]: Probes): readonly [string, string] | undefined =>
  red !== undefined && black !== undefined ? [red, black] : undefined;

/** How far the page moves in a frame while a probe is held near an edge, px. */
function scrollFor(at: Point, start: Point): number {
  if (at.y < EDGE && start.y > at.y) return -SPEED;
  const meter = document.querySelector('[data-meter]')?.getBoundingClientRect();
  const lies = meter !== undefined && meter.width > innerWidth * 0.7;
  const foot = lies ? Math.min(meter.top, innerHeight) : innerHeight;
  // Coming up out of the meter is no wish to go down.
  return at.y > foot - EDGE / 2 && at.y < foot && at.y > start.y ? SPEED : 0;
}

const known = new WeakMap<VisitDesk, Probing>();

/** The hands at a desk: the same for everything that shows it. */
export function probingOf(desk: VisitDesk): Probing {
  const found = known.get(desk) ?? new Probing(desk);
  known.set(desk, found);
  return found;
}
