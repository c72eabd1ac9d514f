import { owned } from '../../store/owner.ts';

/** Notes of visits on this device, one a system, as the ends of their links. */
const keyOf = (system: string): string => owned(`switched-live/aid/1/${system}`);

/** Keeps a note; false when the browser will not. */
export function keepNote(system: string, link: string): boolean {
  try {
    localStorage.setItem(keyOf(system), link);
    return true;
  } catch {
    return false;
  }
}

/** The note kept of a system, or undefined. */
export function keptNote(system: string): string | undefined {
  try {
    return localStorage.getItem(keyOf(system)) ?? undefined;
  } catch {
    return undefined;
  }
}
