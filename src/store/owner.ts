/** Where the owner of this tab's progress is named, for packages on machines that learners share. */
const KEY = 'switched-live/owner';
/** Letters of an owner's name. */
const MOST = 100;

/**
 * Whose progress this tab keeps: empty for the device's own learner. A package that a learning platform launches names
 * its learner, so that two who share a machine do not see each other's work.
 */
export function owner(): string {
  try {
    return sessionStorage.getItem(KEY) ?? '';
  } catch {
    // No such storage, as at build time, or it is barred.
    return '';
  }
}

/** Names the owner, for this tab and until it is closed; to be done before anything is kept or read. False when barred. */
export function setOwner(name: string): boolean {
  try {
    sessionStorage.setItem(KEY, name.slice(0, MOST));
    return true;
  } catch {
    return false;
  }
}

/** Stands between a name and its owner; no id has it. */
const MARK = '~';

/** A name that something is kept under, for the present owner: `switched-live~learner-7`. */
export function owned(name: string): string {
  const whose = owner();
  return whose === '' ? name : `${name}${MARK}${whose}`;
}

/** The name without its owner, where something kept belongs to the present owner; undefined where it is another's. */
export function ownName(kept: string): string | undefined {
  const at = kept.indexOf(MARK);
  const [name, whose] = at < 0 ? [kept, ''] : [kept.slice(0, at), kept.slice(at + 1)];
  return whose === owner() ? name : undefined;
}
