import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync('src/styles/tokens.css', 'utf8');
const tokens = new Map(
  [...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(
    ([, name, light, dark]) => [name ?? '', { light: light ?? '', dark: dark ?? '' }],
  ),
);

/** Relative luminance of a colour, 0 to 1 (WCAG 2.2, definition of relative luminance). */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio). */
function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

const grounds = ['ground', 'card', 'sunk'];
const words = ['ink', 'ink-soft', 'copper', 'verdigris', 'danger', 'fault', 'advice', 'ok'];
const pairs: [string, string, number][] = [
  // 4.5 for words and 3 for what is not words: WCAG 2.2, criteria 1.4.3 and 1.4.11.
  ...words.flatMap((word) => grounds.map((ground): [string, string, number] => [word, ground, 4.5])),
  ['on-live', 'live', 4.5],
  ['on-strip', 'strip', 4.5],
  ['on-way', 'way', 4.5],
  // The marks of the course map stand on ways.
  ['ok', 'way', 4.5],
  ['fault', 'way', 4.5],
  ['advice', 'way', 4.5],
  ['ground', 'ink', 4.5],
  ['ground', 'copper', 4.5],
  ...['edge', 'focus', 'strip-edge'].flatMap((line) =>
    grounds.map((ground): [string, string, number] => [line, ground, 3]),
  ),
  ['live', 'strip', 3],
];

describe.each(['light', 'dark'] as const)('the %s colours', (theme) => {
  it.each(pairs)('show %s on %s with a contrast of at least %d', (front, back, least) => {
    const [a, b] = [tokens.get(front), tokens.get(back)];
    if (!a || !b) throw new Error(`no token ${a ? back : front}`);
    expect(contrast(a[theme], b[theme])).toBeGreaterThanOrEqual(least);
  });
});

it('the contrast of black on white is 21 (WCAG 2.2, definition of contrast ratio)', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
});
