/** What a pointer does on the board: a tap picks up or lands, a drag carries a wire from end to end. */
export interface Drag {
  readonly from: string;
  readonly pointer: number;
  readonly start: readonly [number, number];
  readonly at: readonly [number, number];
  /** True once it has moved far enough to be a drag and not a tap. */
  readonly moved: boolean;
  readonly over: string | undefined;
}

export interface Spot {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

/** A pointer that has moved this far, px on the board, is dragging. */
const FAR_ENOUGH = 6;
/** A wire dropped this near a terminal, px on the board, lands on it. */
const REACH = 30;

export function nearest(
  spots: readonly Spot[],
  [x, y]: readonly [number, number],
  not?: string,
): string | undefined {
  let best: string | undefined;
  let least = REACH;
  for (const spot of spots) {
    const distance = Math.hypot(spot.x - x, spot.y - y);
    if (spot.id === not || distance >= least) continue;
    best = spot.id;
    least = distance;
  }
  return best;
}

export function pull(drag: Drag, at: readonly [number, number], spots: readonly Spot[]): Drag {
  const moved = drag.moved || Math.hypot(at[0] - drag.start[0], at[1] - drag.start[1]) > FAR_ENOUGH;
  return { ...drag, at, moved, over: moved ? nearest(spots, at, drag.from) : undefined };
}
