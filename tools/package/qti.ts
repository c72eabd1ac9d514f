import type { Coursework } from '../../src/course/coursework/coursework.ts';
import { slotsOf, variantSeed } from '../../src/course/coursework/slots.ts';
import { makeItem } from '../../src/course/items/index.ts';
import { seedOf } from '../../src/course/random.ts';
import type { Level, Objective, Task } from '../../src/course/task.ts';
import { qtiItem } from '../../src/files/qti/item.ts';
import { itemPath, qtiManifest } from '../../src/files/qti/manifest.ts';
import { loadOutline, loadShelf } from '../../src/files/site/course.ts';
import { zipOf } from './zip.ts';

/** What an export is of. */
export interface QtiOrder {
  readonly root: string;
  readonly seed: number;
  /** How many variants of each question. */
  readonly count: number;
  readonly coursework?: Coursework | undefined;
}

export interface QtiExport {
  readonly zip: Uint8Array;
  /** How many items of each kind are in it. */
  readonly items: Readonly<Record<string, number>>;
  /** What is left out, and how often: forms of question, jobs, visits. */
  readonly leftOut: Readonly<Record<string, number>>;
}

interface Wanted {
  readonly title: string;
  readonly task: Task;
  readonly seed: number;
  readonly level: Level;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function ofCourse(objectives: readonly Objective[], seed: number, count: number): Wanted[] {
  return objectives.flatMap(({ id, says, tasks }) =>
    tasks.flatMap((task, k) =>
      Array.from({ length: count }, (_, turn) => ({
        title: capital(says),
        task,
        seed: seedOf(`${seed}/${id}/${k}/${turn}`),
        level: 1 as Level,
      })),
    ),
  );
}

/** Adds one to the count of a thing. */
const tally = (counts: Record<string, number>, what: string) => {
  counts[what] = (counts[what] ?? 0) + 1;
};

const FORMS: Readonly<Record<string, string>> = {
  place: 'landing a lead',
  set: 'setting the controls',
  choice: 'choices with several right answers',
  mark: 'marks with several right answers',
  order: 'orders with too many steps',
  number: 'numbers',
};

/**
 * Questions of the course, or of a coursework, as a package of QTI 3: what a standard interaction can ask. The same
 * order gives the same bytes.
 */
export function qtiPackage({ root, seed, count, coursework }: QtiOrder): QtiExport {
  const shelf = loadShelf(root);
  const objectives = loadOutline(root).parts.flatMap(({ lessons }) => lessons);
  const leftOut: Record<string, number> = {};
  let wanted: Wanted[];
  if (coursework) {
    const slots = slotsOf(
      coursework,
      (slug) => objectives.find((lesson) => lesson.slug === slug)?.objectives ?? [],
    );
    for (const { kind } of slots)
      if (kind !== 'question') tally(leftOut, kind === 'job' ? 'wiring jobs' : 'callouts');
    wanted = slots.flatMap((slot) =>
      slot.kind !== 'question'
        ? []
        : Array.from({ length: count }, (_, turn) => ({
            title:
              slot.task.kind === 'questions' ? slot.task.title : capital(slot.objective.replaceAll('-', ' ')),
            task: slot.about,
            seed: variantSeed(coursework, `qti-${seed}`, slot, turn + 1),
            level: slot.level,
          })),
    );
  } else
    wanted = ofCourse(
      objectives.flatMap((lesson) => lesson.objectives),
      seed,
      count,
    );

  const files = new Map<string, Uint8Array>();
  const items: Record<string, number> = {};
  const ids: { id: string }[] = [];
  for (const { title, task, seed: own, level } of wanted) {
    const item = makeItem(shelf, task, own, level);
    const made = qtiItem(shelf, item, title);
    if (!made) {
      tally(leftOut, FORMS[item.form.kind] ?? item.form.kind);
      continue;
    }
    // Two seeds may lead to one question.
    if (files.has(itemPath(made))) continue;
    files.set(itemPath(made), Buffer.from(made.xml));
    ids.push({ id: made.id });
    tally(items, made.kind);
  }
  const name = coursework ? `switched-live-${coursework.id}` : 'switched-live';
  files.set('imsmanifest.xml', Buffer.from(qtiManifest(name, coursework?.title ?? 'Switched Live', ids)));
  return { zip: zipOf(files, 'imsmanifest.xml'), items, leftOut };
}
