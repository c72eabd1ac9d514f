import { href } from './href.ts';
import { notify } from './notice.ts';

const TOLD = 'offline-told';

function sayReady(): void {
  try {
    if (localStorage.getItem(TOLD)) return;
    localStorage.setItem(TOLD, '1');
    notify('Ready to use offline. Everything here now opens without a connection.');
  } catch {
    /* Nothing to remember in that it was said: better never than on every page. */
  }
}

function sayUpdate(registration: ServiceWorkerRegistration): void {
  notify('Update ready. Your wiring and your progress stay.', {
    name: 'Use it now',
    run: () => {
      const again = () => location.reload();
      // Another tab may have changed over already.
      if (!registration.waiting) return again();
      navigator.serviceWorker.addEventListener('controllerchange', again, { once: true });
      registration.waiting.postMessage({ type: 'SKIP_WAITING' });
    },
  });
}

async function register(workers: ServiceWorkerContainer): Promise<void> {
  const registration = await workers.register(href('/sw.js'), { scope: href('/'), updateViaCache: 'none' });
  const watch = (worker: ServiceWorker | null) =>
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) sayUpdate(registration);
    });
  if (registration.waiting && workers.controller) sayUpdate(registration);
  // Taken in another tab: what this one has open is of the old version, and asks to be read anew.
  if (workers.controller) workers.addEventListener('controllerchange', () => sayUpdate(registration));
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  await workers.ready;
  if (!registration.waiting) sayReady();
}

/**
 * Keeps the whole site on the device, and tells the learner twice: once when it is all there, and whenever a new
 * version waits. Where it cannot be kept (storage barred) the site works as before, online.
 */
export const keep = (): Promise<void> => register(navigator.serviceWorker).catch(() => {});
