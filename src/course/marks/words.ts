/** Things one after the other: "a, b and c". */
export const sayList = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Slots by their ids, at most three of them: "valves/2, valves/3 and 4 more". */
export function sayPieces(slots: readonly string[]): string {
  const each = [...new Set(slots)];
  return each.length <= 3 ? sayList(each) : sayList([...each.slice(0, 2), `${each.length - 2} more`]);
}

/** A time in words: "0.8 s", "45 s", "12 min", "3 h". @param ms milliseconds */
export function saySpan(ms: number): string {
  const seconds = ms / 1000;
  if (seconds < 10) return `${Math.round(seconds * 10) / 10}\u00a0s`;
  if (seconds < 100) return `${Math.round(seconds)}\u00a0s`;
  if (seconds < 6000) return `${Math.round(seconds / 60)}\u00a0min`;
  return `${Math.round(seconds / 3600)}\u00a0h`;
}

/** "1 wire", "2 wires". */
export const sayCount = (count: number, one: string, many = `${one}s`): string =>
  `${count}\u00a0${count === 1 ? one : many}`;
