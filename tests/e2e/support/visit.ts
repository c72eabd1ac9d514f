import type { Page } from 'playwright-core';
import type { KeptVisit } from '../../../src/course/callouts/kept-visit.ts';
import type { Act } from '../../../src/engine/diagnose/act.ts';

/** A visit to an authored callout, as an earlier page would have left it on the device: finished when something was said. */
export const visitOf = (id: string, acts: readonly Act[], said?: string): KeptVisit => ({
  id: `callout/${id} 1790000000000`,
  callout: `callout/${id}`,
  acts,
  wheels: [],
  // Later than what the page itself keeps as it opens.
  at: Date.now() + 60_000,
  took: 60_000,
  done: said !== undefined,
  ...(said !== undefined && { said }),
});

/** Puts a visit on the device. The page must have opened its store before. */
export const leaveVisit = (page: Page, visit: KeptVisit): Promise<void> =>
  page.evaluate(
    (kept) =>
      new Promise<void>((done, fail) => {
        const asked = indexedDB.open('switched-live');
        asked.onerror = fail;
        asked.onsuccess = () => {
          const change = asked.result.transaction('visits', 'readwrite');
          change.objectStore('visits').put(kept);
          change.oncomplete = () => {
            asked.result.close();
            done();
          };
          change.onabort = fail;
        };
      }),
    visit,
  );
