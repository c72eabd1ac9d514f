import { href } from '../../shell/href.ts';

/** Sends the learner out: to the system and level that are chosen, with a fault that nobody has seen. */
function sendOut(form: HTMLFormElement): void {
  const chosen = new FormData(form);
  const systems = [...form.querySelectorAll('option')].map(({ value }) => value).filter(Boolean);
  const [which = 0, seed = 0] = crypto.getRandomValues(new Uint32Array(2));
  const system = chosen.get('system') || systems[which % systems.length];
  location.assign(href(`/callouts/visit/#callout/${system}/${seed}/${chosen.get('made')}`));
}

/** Begins what the list of callouts does besides being read: a way to a made callout, the choice of a system, and states. */
export function start(): void {
  const form = document.querySelector<HTMLFormElement>('#endless');
  form?.addEventListener('submit', (event) => {
    event.preventDefault();
    sendOut(form);
  });
  const only = document.querySelector<HTMLSelectElement>('#only');
  const choose = () => {
    for (const card of document.querySelectorAll<HTMLElement>('[data-callout]'))
      card.hidden = only?.value !== '' && card.dataset.system !== only?.value;
  };
  only?.addEventListener('change', choose);
  only?.closest<HTMLElement>('[hidden]')?.removeAttribute('hidden');
  choose();
  void import('./fill.ts').then(({ fill }) => fill());
}
