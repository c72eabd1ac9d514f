import type { Layout } from '../../../course/layout.ts';
import { FileError } from '../../../files/error.ts';
import { shapeTroubles } from '../../../files/shape.ts';
import { parseStage, stageSchema } from '../../../files/stage.ts';
import { stageTroubles } from '../../../files/stage-fit.ts';
import { writeStage } from '../../../files/stage-write.ts';
import { parseYaml } from '../../../files/yaml.ts';
import { canLayOut } from '../../reference/can-lay-out.ts';
import { type Trouble, troubleOf } from '../trouble.ts';
import { type StageDraft, scriptOf } from './draft.ts';

/** What is wrong with a draft: read by the parser that reads the file, and played on its system. */
export function scriptTroubles(draft: StageDraft, layout: Layout | undefined): Trouble[] {
  const file = 'script.yaml';
  const text = writeStage(scriptOf(draft));
  const shape = shapeTroubles(stageSchema, parseYaml(text, file), file);
  if (shape.length > 0) return shape.map(troubleOf);
  if (!layout || layout.id !== draft.system) return [];
  try {
    return stageTroubles(layout, parseStage(text, file), file, ({ system }) => canLayOut(system)).map(
      troubleOf,
    );
  } catch (error) {
    if (error instanceof FileError) return [troubleOf(error)];
    throw error;
  }
}

const names: Readonly<Record<string, string>> = {
  title: 'Title',
  system: 'System',
  wiring: 'Wiring',
  wires: 'Wiring',
  view: 'Drawings',
  steps: 'Steps',
};
const ofStep: Readonly<Record<string, string>> = {
  says: 'caption',
  set: 'switches',
  fail: 'failures',
  follow: 'call to follow',
  spot: 'spotlight',
  view: 'drawings',
  expect: 'what must hold',
};

/** What a form calls the place of a trouble. */
export function nameOfPlace(place: string): string {
  const [, number, key] = /^steps\[(\d+)\](?:\.([a-z]+))?/.exec(place) ?? [];
  if (number !== undefined)
    return `Step ${Number(number) + 1}${key === undefined ? '' : `, ${ofStep[key] ?? key}`}`;
  return names[/^[a-z]+/.exec(place)?.[0] ?? ''] ?? place;
}
