import type { Outline } from '../../course/outline.ts';
import { loadOutline, loadShelf } from './course.ts';

let shelf: ReturnType<typeof loadShelf> | undefined;
let outline: Outline | undefined;

/** The project's own shelf, read once for all pages of a build. */
export function siteShelf(): ReturnType<typeof loadShelf> {
  shelf ??= loadShelf();
  return shelf;
}

/** The project's own course, read once for all pages of a build. */
export function siteOutline(): Outline {
  outline ??= loadOutline();
  return outline;
}
