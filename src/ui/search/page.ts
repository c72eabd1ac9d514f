import { href } from '../shell/href.ts';
import { listen } from '../shell/keys.ts';
import { walk } from './arrows.ts';
import type { Hit } from './query.ts';

type Find = (words: string) => Promise<Hit[]>;

/** Fetches the index and the code that reads it, once, when first wanted. */
function lazyFinder(address: string): () => Promise<Find> {
  let ready: Promise<Find> | undefined;
  return () => {
    ready ??= Promise.all([fetch(address).then((answer) => answer.json()), import('./query.ts')]).then(
      ([file, { finder }]) => {
        const find = finder(file);
        return async (words) => find(words);
      },
    );
    // A lost connection must not bar the next try.
    ready.catch(() => {
      ready = undefined;
    });
    return ready;
  };
}

async function draw(hit: Hit): Promise<HTMLLIElement> {
  const [{ excerpt, highlight }, { addressOf }] = await Promise.all([
    import('./highlight.ts'),
    import('./address.ts'),
  ]);
  const marked = (text: string): Node[] =>
    highlight(text, hit.stems).map((part) => {
      if (!part.hit) return document.createTextNode(part.text);
      const mark = document.createElement('mark');
      mark.textContent = part.text;
      return mark;
    });
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = href(addressOf(hit));
  link.append(...marked(hit.entry.title));
  const kind = document.createElement('span');
  kind.className = 'kind';
  kind.textContent = hit.entry.of ? `${hit.entry.kind}, ${hit.entry.of}` : hit.entry.kind;
  const says = document.createElement('p');
  if (hit.entry.also) says.append('Also called ', ...marked(hit.entry.also), '. ');
  says.append(...marked(excerpt(hit.entry.text, hit.stems)));
  item.append(link, ' ', kind, says);
  return item;
}

/** Brings the search form to life: nothing is fetched until the box has the focus or the address brings a question. */
export function start(form: HTMLFormElement): void {
  const box = form.querySelector('input');
  const list = document.querySelector('#found');
  const count = document.querySelector('#count');
  if (!box || !list || !count) return;
  const finder = lazyFinder(href('/search/index.json'));
  let latest = 0;

  const run = async (): Promise<void> => {
    const mine = ++latest;
    const words = box.value.trim();
    const shown = new URL(location.href);
    if (words) shown.searchParams.set('q', words);
    else shown.searchParams.delete('q');
    history.replaceState(null, '', shown);
    try {
      const hits = words ? (await (await finder())(words)).slice(0, 20) : [];
      const items = await Promise.all(hits.map(draw));
      if (mine !== latest) return;
      list.replaceChildren(...items);
      count.textContent = !words
        ? ''
        : hits.length === 0
          ? 'Nothing found. Try one plain word.'
          : `${hits.length} found`;
    } catch {
      count.textContent = 'The search list could not be fetched. Check your connection and try again.';
    }
  };

  box.addEventListener('focus', () => void finder().catch(() => {}), { once: true });
  box.addEventListener('input', () => void run());
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void run();
  });
  walk(box, list);
  // At once, where every other page waits until it has loaded.
  listen();
  // `/` on another page leads here, to type at once.
  if (location.hash === '#q') box.focus();
  const asked = new URLSearchParams(location.search).get('q');
  if (asked) {
    box.value = asked;
    void run();
  }
}
