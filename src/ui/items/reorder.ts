/** A list with one thing moved to another place; places outside the list are its ends. */
export function moved<T>(list: readonly T[], from: number, to: number): readonly T[] {
  const rest = [...list];
  const [one] = rest.splice(from, 1);
  if (one === undefined) return list;
  rest.splice(Math.max(0, Math.min(rest.length, to)), 0, one);
  return rest;
}
