import { href } from '../shell/href.ts';
import type { Learner } from './learner.ts';
import { markOf, wordOf } from './mark.ts';

const all = <T extends HTMLElement>(selector: string) => [...document.querySelectorAll<T>(selector)];

/** Shows the states on the map: mark and word of each lesson, and how far the live gets. */
function fillMap({ state, next }: Learner): void {
  for (const { lesson, ...rest } of state.lessons) {
    const tile = document.querySelector(`[data-lesson="${lesson.slug}"]`);
    if (!tile) continue;
    const mark = markOf(rest);
    tile.classList.toggle('next', next.path === `/lessons/${lesson.slug}/`);
    const shape = document.querySelector(`[data-mark="${mark}"] svg`)?.cloneNode(true);
    const screw = tile.querySelector('.screw');
    if (shape) screw?.replaceChildren(shape);
    screw?.setAttribute('class', `screw is-${mark}`);
    const word = tile.querySelector('.state');
    if (word) {
      word.textContent = wordOf(mark);
      word.className = `state is-${mark}`;
    }
  }
  let live = true;
  for (const { part, state: known } of state.parts) {
    const row = document.querySelector(`[data-part="${part.id}"]`);
    row?.classList.toggle('fed', live);
    live &&= known === 'solid';
    row?.classList.toggle('made', live);
  }
  for (const map of all('[data-map]')) map.toggleAttribute('data-solid', live);
}

function fillNext({ next, state }: Learner): void {
  for (const link of all<HTMLAnchorElement>('[data-step]')) link.href = href(next.path);
  for (const title of all('[data-title]')) title.textContent = next.title;
  const lesson = state.lessons.find((one) => next.path === `/lessons/${one.lesson.slug}/`)?.lesson;
  const minutes = lesson ? ` ${lesson.minutes} minutes.` : '';
  for (const why of all('[data-why]')) why.textContent = `${next.why}${minutes}`;
  const solid = state.lessons.filter((one) => one.state === 'solid').length;
  const due = state.due > 0 ? `, ${state.due} due` : '';
  if (state.unseen === state.objectives.length) return;
  for (const tally of all('[data-tally]'))
    tally.textContent = `${solid} of ${state.lessons.length} lessons solid${due}.`;
}

/**
 * Brings the map to life: fetches what reads the learner's log, shows it, and keeps the route that is chosen. Without it
 * the map is whole, and every lesson can be reached.
 */
export async function start(): Promise<void> {
  const { readLearner } = await import('./learner.ts');
  const first = await readLearner();
  const { store } = first;
  const routes = all<HTMLInputElement>('[data-map] [name="route"]');
  const show = (learner: Learner) => {
    const chosen = learner.choices.route ?? '';
    for (const radio of routes) radio.checked = radio.value === chosen;
    fillMap(learner);
    fillNext(learner);
  };
  const again = () => void readLearner().then(show);
  show(first);
  for (const radio of routes)
    radio.addEventListener('change', async () => {
      await (radio.value ? store.choose({ route: radio.value }) : store.forget('route'));
      again();
    });
  store.onChange(again);
  // A page kept by the browser on the way back shows what has been learnt since.
  addEventListener('pageshow', ({ persisted }) => persisted && again());
}
