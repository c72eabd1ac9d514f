import { href } from '../shell/href.ts';
import { start as fill } from './fill.ts';

/** Keeps the route of the button that is pressed, then goes to its next step. Marks the lessons on the page, too. */
export function follow(): void {
  void fill();
  for (const link of document.querySelectorAll<HTMLAnchorElement>('a[data-follow]'))
    link.addEventListener('click', async (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
      event.preventDefault();
      try {
        const { nextFor, readLearner } = await import('./learner.ts');
        await (await readLearner()).store.choose({ route: link.dataset.follow ?? '' });
        location.assign(href((await nextFor()).path));
      } catch {
        location.assign(link.href);
      }
    });
}
