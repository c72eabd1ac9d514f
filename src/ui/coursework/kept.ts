/** A sign on the device that there are sittings: pages wake at once where it stands. */
export const KEPT = 'switched-live/coursework';

export function markKept(): void {
  try {
    localStorage.setItem(KEPT, '1');
  } catch {
    // Where nothing is kept, the page wakes at the first touch.
  }
}
