import { href } from './href.ts';
import { listen } from './keys.ts';
import { wire } from './theme.ts';

/*
  What every page does besides being read. It is fetched when the page has loaded, so that nothing waits for it; and what
  only some learners need is fetched when it is called for.
*/

/** The page comes first: keeping the site for offline begins when it has stood still for a while (milliseconds). */
const PAUSE = 2500;

/** Makes every *Continue* lead straight to where the learner left off; should that fail, the map says the next step. */
function goOn(): void {
  for (const link of document.querySelectorAll<HTMLAnchorElement>('a[data-continue]'))
    link.addEventListener('click', (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
      event.preventDefault();
      import('../map/learner.ts')
        .then(({ nextFor }) => nextFor())
        .then(
          ({ path }) => location.assign(href(path)),
          () => location.assign(link.href),
        );
    });
}

/** Begins all of it; the page has loaded. */
export function start(): void {
  const colours = document.querySelector<HTMLButtonElement>('.theme');
  if (colours) wire(colours);
  listen();
  goOn();
  if (document.querySelector('.gloss')) void import('./terms.ts').then(({ explain }) => explain());
  if (location.search.includes('hl=')) void import('../search/landed.ts').then(({ mark }) => mark());
  if (!import.meta.env.PROD || import.meta.env.PUBLIC_FOR_PACKAGES || !('serviceWorker' in navigator)) return;
  setTimeout(() => import('./offline.ts').then(({ keep }) => keep()), PAUSE);
}
