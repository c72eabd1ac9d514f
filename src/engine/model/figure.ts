/**
 * A number as the pages print it: rounded half up to the places given, with a true minus sign and no zeros at the end
 * unless `fixed` keeps them.
 */
export function figure(value: number, places = 2, fixed = false): string {
  // 1.005 is stored a hair below itself: the exponent form shifts the point without that error.
  const rounded = Number(`${Math.round(Number(`${Math.abs(value)}e${places}`))}e-${places}`);
  const digits = fixed ? rounded.toFixed(places) : String(rounded);
  return value < 0 && rounded > 0 ? `−${digits}` : digits;
}
