import { href } from '../shell/href.ts';
import type { Level } from './find-api.ts';
import { becomeOwner } from './learner.ts';
import { pathIn, startPath } from './place.ts';
import type { NoPlatform, Platform } from './platform.ts';
import { makeRunner, type Runner } from './runner.ts';
import { readSetting, SETTING_PATH, type Setting } from './setting.ts';
import type { Subject } from './subject.ts';
import { makeView } from './view.ts';

/** The platform is told at least so often while the learner looks on, for time and for sessions that run out. */
const EVERY = 120_000;
/** What was not taken is tried again after so long. */
const AGAIN = 30_000;
/** Changes that come together go in one report. */
const TOGETHER = 300;

const clock = () => performance.now();

async function fetchSetting(): Promise<Setting | undefined> {
  const answer = await fetch(href(SETTING_PATH), { cache: 'no-store' });
  return answer.ok ? readSetting(await answer.json()) : undefined;
}

async function openPlatform({ standard }: Setting): Promise<Platform | NoPlatform> {
  const from = window as unknown as Level;
  switch (standard) {
    case 'scorm-1.2':
      return (await import('./scorm/scorm-12.ts')).openScorm12(from, clock);
    case 'scorm-2004':
      return (await import('./scorm/scorm-2004.ts')).openScorm2004(from, clock);
    case 'cmi5':
      return (await import('./cmi5/platform.ts')).openCmi5(location.href);
  }
}

/** Nothing of the store may be read before it is known whose it is: what needs it is fetched here. */
async function openSubject({ work }: Setting, platform: Platform) {
  const [{ openStore }, { fetchOutline }] = await Promise.all([
    import('../../store/open.ts'),
    import('../course/shelf.ts'),
  ]);
  const [store, outline] = await Promise.all([openStore(), fetchOutline()]);
  const room = platform.room.suspend;
  const subject: Subject =
    work.kind === 'course'
      ? (await import('./course-subject.ts')).courseSubject(store, outline, room)
      : (await import('./coursework-subject.ts')).courseworkSubject(
          store,
          outline,
          room,
          work.coursework,
          platform.learner,
        );
  return { store, subject };
}

/** Connects to the platform, shows the site, and reports until the page goes away. */
export async function launch(): Promise<void> {
  // The site itself has come here in its frame: it has no business in this page twice.
  if (window.frameElement?.id === 'site') return location.replace(href('/'));
  const view = makeView();
  const without = (why: string) => view.offerWithout(why, () => view.open(href('/')));
  let setting: Setting | undefined;
  try {
    setting = await fetchSetting();
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    return without(
      `The package does not say what it is for: launch/setting.json could not be read (${why}).`,
    );
  }
  if (!setting)
    return without('This page belongs into a package for a learning platform, and this is not one.');
  const { work } = setting;
  const title = work.kind === 'course' ? work.title : work.coursework.title;
  document.title = title;
  let platform: Platform | NoPlatform;
  try {
    platform = await openPlatform(setting);
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    platform = { problem: `Your learning platform could not be reached: ${why}` };
  }
  if ('problem' in platform) return without(platform.problem);
  await follow(setting, platform, view).catch((problem: unknown) => {
    const why = problem instanceof Error ? problem.message : String(problem);
    without(`The course could not be opened: ${why}`);
  });
}

async function follow(setting: Setting, platform: Platform, view: ReturnType<typeof makeView>) {
  const shares = !becomeOwner(platform.learner.id);
  let runner: Runner | undefined;
  const end = () => void (runner ? runner.end() : platform.end());
  // Registered first: whatever goes wrong from here on, the session is ended.
  addEventListener('pagehide', end);
  // A page that comes back from the browser's memory has no session any more.
  addEventListener('pageshow', ({ persisted }) => persisted && location.reload());

  const { store, subject } = await openSubject(setting, platform);
  const root = new URL(href('/'), location.href).href;
  const place = () => {
    const address = view.address();
    return address === undefined ? undefined : pathIn(address, root);
  };
  let again: ReturnType<typeof setTimeout> | undefined;
  const own = makeRunner(platform, subject, place, (told) => {
    view.tell(told, platform.mode);
    clearTimeout(again);
    if (told.problems.length > 0) again = setTimeout(() => void own.update(), AGAIN);
  });
  runner = own;
  const lost = await subject.restore(platform.suspended);
  if (lost !== undefined) view.warn(lost);
  if (shares) view.warn('This browser does not let the site keep learners apart. Do not share this device.');
  view.open(href(startPath(platform.bookmark, subject.start)));
  await own.update();

  let soon: ReturnType<typeof setTimeout> | undefined;
  store.onChange(() => {
    clearTimeout(soon);
    soon = setTimeout(() => void own.update(), TOGETHER);
  });
  document.addEventListener('visibilitychange', () => void own.update('too'));
  setInterval(() => document.visibilityState === 'visible' && void own.update('too'), EVERY);
  view.onLeave(async () => {
    await own.update('too');
    await own.end();
    view.left(platform.back);
  });
}
