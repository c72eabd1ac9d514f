import type { StageView } from '../../course/stage.ts';
import type { StripSizes } from '../drawings/strip.ts';

/** How big the letters are; `s` fits the whole drawing in, however small they get. */
export const LETTERS = ['s', 'm', 'l', 'xl'] as const;
export type Letters = (typeof LETTERS)[number];

export const lettersName: Readonly<Record<Letters, string>> = {
  s: 'S: the whole drawing',
  m: 'M',
  l: 'L',
  xl: 'XL',
};

/** Pixels of the least label on a screen of 1366 × 768; 0 asks for nothing. */
export const leastLabel: Readonly<Record<Letters, number>> = { s: 0, m: 20, l: 26, xl: 34 };
/** Pixels of the caption on a screen of 1366 × 768. */
export const captionSize: Readonly<Record<Letters, number>> = { s: 26, m: 30, l: 36, xl: 44 };
/** Pixels that no label goes below where letters are asked for, and no caption: a phone in the hand is near. */
export const NEAR_LABEL = 11;
export const NEAR_CAPTION = 17;

/** The strip in letters of 20 units. */
export const BIG_STRIP: StripSizes = {
  box: 104,
  strip: 56,
  width: 1340,
  leastPitch: 56,
  mostPitch: 92,
  leastLanes: 60,
  lane: 11,
};

/** Height of the least label of each drawing, in its own units. */
export const labelUnits: Readonly<Record<StageView, number>> = { strip: 20, circuit: 11, pipework: 12 };

export const viewName: Readonly<Record<StageView, string>> = {
  strip: 'Strip',
  circuit: 'Circuit',
  pipework: 'Pipework',
};

/**
 * Pixels to a unit of a drawing: as large as fits, or larger where the letters would be too small to read.
 * @param fit the scale at which the whole drawing fits
 * @param unit pixels to a unit of the screen, 1 at 1366 × 768
 */
export function scaleOf(view: StageView, letters: Letters, fit: number, unit: number): number {
  const wanted = leastLabel[letters] === 0 ? 0 : Math.max(NEAR_LABEL, leastLabel[letters] * unit);
  return Math.max(fit, wanted / labelUnits[view]);
}

/**
 * Where a picture that is larger than its window is moved to, so that what matters is in sight.
 * @param size of the picture and of the window along one side; `middle` of what matters, in the picture
 */
export function shift(size: number, window: number, middle: number): number {
  if (size <= window) return (window - size) / 2;
  return Math.min(0, Math.max(window - size, window / 2 - middle));
}
