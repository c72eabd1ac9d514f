/** Size of every word in drawing units: 12.3 px where the drawing is 328 px wide. */
export const SIZE = 12;

/** Widths of letters in sizes, a little over what both typefaces measure. */
const letter = (c: string): number =>
  /[mwMW]/.test(c) ? 0.98 : /[A-Z]/.test(c) ? 0.7 : /[fijlrt ,-]/.test(c) ? 0.4 : 0.58;

/** Width of a text in drawing units. */
export const widthOf = (text: string): number => SIZE * [...text].reduce((sum, c) => sum + letter(c), 0);
