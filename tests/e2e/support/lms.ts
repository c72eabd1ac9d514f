import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { BrowserContext, FrameLocator, Page } from 'playwright-core';
import type { PackedWork } from '../../../src/ui/lms/setting.ts';
import { type Opening, openPage } from './browser.ts';
import { makeStrict } from './lms-strict.ts';

/*
  A learning platform for tests: a page that frames the launch page and has the usual test double of SCORM in it, with
  the standard's own limits around it. It is served beside the site under test, under /platform/.
*/

type Standard = 'scorm-1.2' | 'scorm-2004';
export type Cmi = Readonly<Record<string, unknown>>;

const double = () =>
  readFileSync(
    fileURLToPath(import.meta.resolve('scorm-again')).replace(/[^/]*$/, 'scorm-again.min.js'),
    'utf8',
  );

const page = (standard: Standard, before: Cmi, launch: string): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Platform</title>
<meta name="viewport" content="width=device-width">
<style>body{margin:0}iframe{display:block;border:0;width:100%;height:100vh}</style></head><body>
<script type="module">
import { Scorm12API, Scorm2004API } from '/platform/double.js';
const makeStrict = ${makeStrict.toString()};
const inner = new (${standard === 'scorm-1.2' ? 'Scorm12API' : 'Scorm2004API'})({ autocommit: false, logLevel: 5 });
inner.loadFromJSON(${JSON.stringify(before)}, 'cmi');
const strict = makeStrict(inner, '${standard}');
const fails = new Map();
const api = Object.fromEntries(Object.entries(strict.api).map(([name, does]) => [name, (...args) => {
  if (fails.get(name) === 'throw') throw new Error('the session is gone');
  return fails.get(name) ?? does(...args);
}]));
window['${standard === 'scorm-1.2' ? 'API' : 'API_1484_11'}'] = api;
window.platform = { strict, fails, cmi: () => inner.renderCMIToJSONObject().cmi };
const frame = document.createElement('iframe');
frame.title = 'Activity';
frame.src = '${launch}';
document.body.append(frame);
</script></body></html>`;

/** Puts the setting of a package where a packager would have, over the site's own. */
export const withSetting = (context: BrowserContext, setting: unknown): Promise<unknown> =>
  context.route('**/launch/setting.json', (route) => route.fulfill({ json: setting }));

export interface Launch {
  readonly standard: Standard;
  readonly work: PackedWork;
  /** What the platform has of the learner and of earlier sessions. */
  readonly before: Cmi;
  readonly opening?: Omit<Opening, 'path' | 'prepare'>;
  readonly prepare?: Opening['prepare'];
  /** Address of the launch page. */
  readonly launch?: string;
}

export interface Launched {
  readonly page: Page;
  /** The launch page, and the site in it. */
  readonly frame: FrameLocator;
  readonly site: FrameLocator;
  /** What the platform has now. */
  readonly cmi: () => Promise<Cmi>;
  readonly calls: () => Promise<string[]>;
  /** What broke the standard's limits. */
  readonly breaches: () => Promise<string[]>;
  /** Makes a method answer so, or throw; undefined mends it. */
  readonly fail: (method: string, how: 'false' | 'throw' | undefined) => Promise<void>;
  /** Takes the activity away, as closing its window does. */
  readonly close: () => Promise<void>;
}

interface InPage {
  readonly platform: {
    readonly strict: { readonly calls: string[]; readonly breaches: string[] };
    readonly fails: Map<string, string>;
    readonly cmi: () => Cmi;
  };
}

/** Opens a package in a platform, in a browser of its own. */
export async function launch(how: Launch): Promise<Launched> {
  const { standard, work, before, opening, prepare, launch: address = '/launch/' } = how;
  const opened = await openPage({
    width: 1366,
    height: 768,
    ...opening,
    path: '/platform/index.html',
    prepare: async (context) => {
      await context.route('**/platform/index.html', (route) =>
        route.fulfill({ contentType: 'text/html', body: page(standard, before, address) }),
      );
      await context.route('**/platform/double.js', (route) =>
        route.fulfill({ contentType: 'text/javascript', body: double() }),
      );
      await withSetting(context, { standard, work });
      await prepare?.(context);
    },
  });
  const frame = opened.frameLocator('iframe');
  return {
    page: opened,
    frame,
    site: frame.frameLocator('#site'),
    cmi: () => opened.evaluate(() => (window as unknown as InPage).platform.cmi()),
    calls: () => opened.evaluate(() => (window as unknown as InPage).platform.strict.calls),
    breaches: () => opened.evaluate(() => (window as unknown as InPage).platform.strict.breaches),
    fail: (method, failing) =>
      opened.evaluate(
        ([name, value]) => {
          const { fails } = (window as unknown as InPage).platform;
          if (value) fails.set(name ?? '', value);
          else fails.delete(name ?? '');
        },
        [method, failing],
      ),
    close: () => opened.evaluate(() => document.querySelector('iframe')?.remove()),
  };
}

/** What a platform gives back at the next launch, out of what it has at the end of one. */
export function nextLaunch(standard: Standard, cmi: Cmi): Cmi {
  if (standard === 'scorm-1.2') {
    const { lesson_status, lesson_location, score } = cmi.core as Cmi;
    const core = { ...LEARNER_12.core, entry: 'resume', lesson_status, lesson_location, score };
    return { core, suspend_data: cmi.suspend_data };
  }
  const { completion_status, success_status, location, suspend_data, score, progress_measure } = cmi;
  return {
    ...LEARNER_2004,
    entry: 'resume',
    completion_status,
    success_status,
    location,
    suspend_data,
    score,
    progress_measure,
  };
}

export const LEARNER_12 = {
  core: {
    student_id: 'ann-7',
    student_name: 'Reed, Ann',
    credit: 'credit',
    lesson_mode: 'normal',
    entry: 'ab-initio',
  },
} as const;
export const LEARNER_2004 = {
  learner_id: 'ann-7',
  learner_name: 'Reed, Ann',
  credit: 'credit',
  mode: 'normal',
  entry: 'ab-initio',
} as const;
