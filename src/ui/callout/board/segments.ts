/** Which of the seven segments of a digit are lit. Segments a to g: top, right upper, right lower, foot, left lower, left upper, middle. */
const LIT: Readonly<Record<string, string>> = {
  0: 'abcdef',
  1: 'bc',
  2: 'abged',
  3: 'abgcd',
  4: 'fgbc',
  5: 'afgcd',
  6: 'afgedc',
  7: 'abc',
  8: 'abcdefg',
  9: 'abcdfg',
  '-': 'g',
  L: 'fed',
  E: 'afged',
  r: 'eg',
  ' ': '',
};

/** Outlines of the segments in a box of 20 by 36. */
export const SEGMENTS: Readonly<Record<string, string>> = {
  a: 'M4 1h12l2 2-3 3H5L2 3z',
  b: 'M19 4v12l-1.5 1.5L15 15V7z',
  c: 'M19 20v12l-4-3v-8l2.5-2.5z',
  d: 'M16 35H4l-2-2 3-3h10l3 3z',
  e: 'M1 32V20l1.5-1.5L5 21v8z',
  f: 'M1 16V4l4 3v8l-2.5 2.5z',
  g: 'M4 18l2-2h8l2 2-2 2H6z',
};

/** A figure of the display: its lit segments, and whether a point follows. */
export interface Figure {
  readonly lit: string;
  readonly point: boolean;
}

/** Text as four figures set to the right. Knows digits, minus, `L`, `E`, `r` and the point; throws a RangeError for anything else. */
export function figuresOf(text: string): Figure[] {
  const figures: Figure[] = [];
  for (const letter of text) {
    const last = figures.at(-1);
    if (letter === '.' && last) figures[figures.length - 1] = { ...last, point: true };
    else figures.push({ lit: litOf(letter), point: false });
  }
  while (figures.length < 4) figures.unshift({ lit: '', point: false });
  return figures;
}

function litOf(letter: string): string {
  const lit = LIT[letter];
  if (lit === undefined) throw new RangeError(`the display cannot show "${letter}"`);
  return lit;
}
