/** A list with one thing moved to another place; places outside the list are its ends. */
export function moved<T>(list: readonly T[], from: number, to: number): readonly T[] {
  const rest = [...list];
  const [one] = rest.splice(from, 1);
  if (one === undefined) return list;
  rest.splice(Math.max(0, Math.min(rest.length, to)), 0, one);
  return rest;
}

/**
 * Where the row that is dragged goes: the first row whose middle the pointer has passed on the way there.
 * @param y of the pointer, px from the top of the window
 */
export function placeUnder(rows: readonly Element[], from: number, y: number): number | undefined {
  const to = rows.findIndex((row, at) => {
    const { top, height } = row.getBoundingClientRect();
    return at < from ? y < top + height / 2 : at > from && y > top + height / 2;
  });
  return to < 0 ? undefined : to < from ? to : from + 1;
}

/** How far an arrow key moves a row. */
export const stepOf = ({ key }: KeyboardEvent): number | undefined => ({ ArrowUp: -1, ArrowDown: 1 })[key];
