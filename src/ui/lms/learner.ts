import { type Learner, readCode } from '../../course/coursework/coursework.ts';
import { seedOf } from '../../course/random.ts';

/** Where the store looks whose device this is at the moment: see the store's owner. */
const OWNER = 'switched-live/owner';

/** A learner's id in 64 bits, in letters and digits: nobody reads the id out of it. */
const hashed = (id: string): string =>
  [`${id}`, `${id} again`].map((text) => seedOf(text).toString(36).padStart(7, '0')).join('');

/** Under whose name this device keeps what this learner does: learners who share a device do not see each other's work. */
export const ownerOf = (learnerId: string): string => hashed(learnerId);

/**
 * The code that the platform's learner has in a coursework: their id there, where it can be one, else one made of it.
 */
export function courseworkLearner({ id, name }: { readonly id: string; readonly name: string }): Learner {
  const code = readCode(id) ?? `P-${hashed(id).toUpperCase()}`;
  const shown = readable(name);
  return { code, ...(shown !== '' && { name: shown }) };
}

/** Platforms write names as “Family, Given”. */
function readable(name: string): string {
  const [family = '', given, ...more] = name.split(',').map((part) => part.trim());
  const whole = given && more.length === 0 ? `${given} ${family}` : name.trim();
  return whole.slice(0, 80);
}

/** Sets whose work this tab shows, before anything of it is read. False where the browser does not let it. */
export function becomeOwner(learnerId: string): boolean {
  try {
    sessionStorage.setItem(OWNER, ownerOf(learnerId));
    return true;
  } catch {
    return false;
  }
}
