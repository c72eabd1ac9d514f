import { loadShelf } from './course.ts';

let kept: ReturnType<typeof loadShelf> | undefined;

/** The project's own shelf, read once for all pages of a build. */
export function siteShelf(): ReturnType<typeof loadShelf> {
  kept ??= loadShelf();
  return kept;
}
