import type { StageScript } from '../../course/stage.ts';
import type { SystemSpec } from '../../engine/model/system.ts';
import { layoutFile } from '../layout-file.ts';
import { parseStage } from '../stage.ts';
import type { SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

export const STAGES = 'content/stage';
const ENDING = '.yaml';

/** A script of ours: its id is the name of its file. */
export interface StagePage extends StageScript {
  readonly id: string;
}

/**
 * Every stage script of the course, in the order of the files' names.
 * @throws FileError naming the file and the place when one is not sound
 */
export const loadStages = (root?: string): StagePage[] =>
  filesIn(STAGES, ENDING, root).map(({ name, text }) => ({
    id: name.slice(0, -ENDING.length),
    ...parseStage(text, `${STAGES}/${name}`),
  }));

/** What the stage needs of a system: itself, and its wirings, right ones first. */
export interface StageSystem {
  readonly spec: SystemSpec;
  readonly choices: readonly {
    readonly id: string;
    readonly title: string;
    readonly wires: SystemFile['references'][number]['wires'];
  }[];
}

export function stageLibrary(file: SystemFile): StageSystem {
  const { spec, right, wrong } = layoutFile(file);
  const plain = ({ id, title, wires }: StageSystem['choices'][number]) => ({ id, title, wires });
  return {
    spec,
    choices: [
      ...right.map(plain),
      ...wrong.map((wiring) => plain({ ...wiring, title: `Wrong: ${wiring.title}` })),
    ],
  };
}
