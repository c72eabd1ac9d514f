import { dailyCallout } from '../../../course/callouts/daily.ts';
import { openStore } from '../../../store/open.ts';
import { standingOf, standingWords } from './standing.ts';
import { dayOf } from './today.ts';

/** Shows on each card how this device's learner stands with it, and which system has its turn today. */
export async function fill(): Promise<void> {
  const systems = new Map(
    [...document.querySelectorAll<HTMLOptionElement>('#system option[value]:not([value=""])')].map(
      ({ value, textContent }) => [value, textContent.trim()],
    ),
  );
  const { system, level } = dailyCallout(dayOf(new Date()), [...systems.keys()]);
  const today = document.querySelector('[data-today]');
  if (today) today.textContent = `${systems.get(system)}, level ${level}.`;
  const store = await openStore();
  const show = async () => {
    const [trials, visits] = await Promise.all([store.trials(), store.visits()]);
    for (const card of document.querySelectorAll<HTMLElement>('[data-callout]')) {
      const standing = standingOf(trials, visits, card.dataset.callout ?? '');
      card.dataset.standing = standing;
      const word = card.querySelector('.word');
      if (word) word.textContent = standingWords[standing];
    }
  };
  await show();
  store.onChange(() => void show());
  addEventListener('pageshow', ({ persisted }) => persisted && void show());
}
