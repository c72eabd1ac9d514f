/**
 * What must be there. Only for what cannot be missing unless the code around it is wrong.
 * @throws Error when it is missing all the same
 */
export function sure<T>(thing: T | undefined | null): T {
  if (thing === undefined || thing === null) throw new Error('something that must be there is missing');
  return thing;
}
