import { execFileSync } from 'node:child_process';
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { atMost, type Section, sayKilobytes } from './figure.ts';
import { weighPage } from './scripts.ts';
import type { Effort } from './stopwatch.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const site = join(root, 'dist');

/** JavaScript of the wiring page and of the heaviest page of text: one without islands. */
export function weighPages(job: string, { smoke }: Effort): Section {
  const title = 'JavaScript, gzip';
  if (!existsSync(join(site, 'index.html'))) {
    if (smoke)
      return { title, figures: [{ what: 'the site is not built: `npm run build` first', value: '–' }] };
    execFileSync('npx', ['astro', 'build'], { cwd: root, stdio: 'ignore' });
  }
  const wiring = weighPage(site, `jobs/${job}`);
  const texts = globSync('**/index.html', { cwd: site })
    .filter((file) => !readFileSync(join(site, file), 'utf8').includes('<astro-island'))
    .map((file) => ({ page: dirname(file), weight: weighPage(site, dirname(file)) }));
  const lessons = globSync('lessons/*/index.html', { cwd: site })
    .map((file) => ({ page: dirname(file), weight: weighPage(site, dirname(file)) }))
    .sort((a, b) => b.weight.atOnce - a.weight.atOnce);
  const [lesson] = lessons;
  if (!lesson) throw new Error('the site has no lesson');
  if (texts.length === 0) throw new Error('the site has no page of text');
  const heaviest = texts.reduce((a, b) => (b.weight.atOnce > a.weight.atOnce ? b : a));
  return {
    title,
    figures: [
      atMost('wiring page, before anybody stirs', wiring.atOnce, 10_000, sayKilobytes),
      atMost('wiring page, fetched when somebody does', wiring.waking, 70_000, sayKilobytes),
      {
        what: 'wiring page, with all that it fetches on demand (the judge, sheets, the smallest change)',
        value: sayKilobytes(wiring.atOnce + wiring.later),
      },
      atMost(
        `page of text, the heaviest of ${texts.length} (${heaviest.page})`,
        heaviest.weight.atOnce,
        // Without an island; the map's and the search's own small scripts count.
        6000,
        sayKilobytes,
      ),
      atMost(
        `lesson, the heaviest of ${lessons.length} (${lesson.page}), before it is touched`,
        lesson.weight.atOnce,
        30_000,
        sayKilobytes,
      ),
      {
        what: 'that lesson, with all that it fetches on a touch',
        value: sayKilobytes(lesson.weight.atOnce + lesson.weight.later),
      },
      ...['.', 'practice', 'progress'].map((page) => ({
        what: page === '.' ? 'home, before it is used' : `${page}, before it is used`,
        value: sayKilobytes(weighPage(site, page).atOnce),
      })),
      {
        what: 'page of text, with what it fetches on demand',
        value: sayKilobytes(heaviest.weight.atOnce + heaviest.weight.later),
      },
    ],
  };
}
