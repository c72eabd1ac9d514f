/**
 * A number as the pages print it: rounded half up to the places given, with a true minus sign and no zeros at the end
 * unless `fixed` keeps them.
 */
export function figure(value: number, places = 2, fixed = false): string {
  // 1.005 is stored a hair below itself: the nudge brings it back before it is rounded.
  const rounded = Math.round(Math.abs(value) * 10 ** places + 1e-9) / 10 ** places;
  const digits = fixed ? rounded.toFixed(places) : String(rounded);
  return value < 0 && rounded > 0 ? `−${digits}` : digits;
}
