/** The value, or a failure of the test when it is missing. */
export function must<T>(value: T | undefined | null, what = 'a value'): T {
  if (value === undefined || value === null) throw new Error(`expected ${what}`);
  return value;
}
