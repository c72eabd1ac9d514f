import { openLibrary } from '../../../src/cli/library.ts';
import type { GradeSource } from '../../../src/course/coursework/source.ts';
import type { Layout } from '../../../src/course/layout.ts';
import { sure } from '../../../src/course/marks/sure.ts';
import { makeRandom } from '../../../src/course/random.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { makeSource } from '../../../src/files/coursework-source.ts';
import { jobStart } from '../../../src/files/job-start.ts';
import { layoutFile, makeLayout } from '../../../src/files/layout-file.ts';
import { loadCallouts, loadDoubleFaults } from '../../../src/files/site/callouts.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { jobPages } from '../../../src/files/site/jobs.ts';

const library = openLibrary();
const asker = { file: 'test', place: '' };
/** All layouts of the course. */
export const layouts: readonly Layout[] = library.systemIds.map((id) =>
  makeLayout(layoutFile(library.system(id, asker))),
);

export function layoutOf(id: string): Layout {
  const layout = layouts.find((one) => one.id === id);
  if (!layout) throw new RangeError(`expected a layout, found "${id}"`);
  return layout;
}

/** The same wiring on a strip whose numbers are shuffled. */
export function renumbered({ system }: Layout, wires: readonly Wire[], seed: number): Wire[] {
  const random = makeRandom(seed);
  const to = new Map<string, string>();
  for (const { id, kind } of system.parts) {
    if (kind.kind !== 'strip') continue;
    const ways = kind.terminals.map((terminal) => `${id}/${terminal.id}`);
    const shuffled = random.shuffle(ways);
    for (const [k, way] of ways.entries()) to.set(way, sure(shuffled[k]));
  }
  return wires.map(([a, b]) => [to.get(a) ?? a, to.get(b) ?? b]);
}

/** Everything that grading reads, from the content folder. */
export function folderSource(): GradeSource {
  const shelf = loadShelf();
  const jobs = new Map(jobPages().map(({ job, given, was }) => [job.id, jobStart(job, given, was)]));
  const callouts = new Map(loadCallouts().map((file) => [file.id, file]));
  const found = <T>(thing: T | undefined, id: string): T => {
    if (thing === undefined) throw new RangeError(`there is no "${id}"`);
    return thing;
  };
  return makeSource({
    layout: shelf.layout,
    quiz: shelf.quiz,
    job: (id) => found(jobs.get(id), id),
    callout: (id) => found(callouts.get(id), id),
    doubles: loadDoubleFaults(),
  });
}
