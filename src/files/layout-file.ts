import type { Layout, RightWiring, WrongWiring } from '../course/layout.ts';
import type { SystemSpec } from '../engine/model/system.ts';
import { buildChecked } from './build.ts';
import { applyMistake } from './mistake.ts';
import type { SystemFile } from './system.ts';

/** A layout as it travels to the browser: all but the built system, which is made again there. */
export interface LayoutFile {
  readonly spec: SystemSpec;
  readonly alsoCalled: readonly string[];
  readonly right: readonly RightWiring[];
  readonly wrong: readonly WrongWiring[];
}

/** What a layout is made from, out of its system file. */
export const layoutFile = ({ spec, about, references, mistakes }: SystemFile): LayoutFile => ({
  spec,
  alsoCalled: about?.alsoCalled ?? [],
  right: references.map(({ id, title, wires }) => ({ id, title, wires })),
  wrong: mistakes.map((mistake) => ({
    id: mistake.id,
    title: mistake.title,
    says: mistake.says,
    breaks: mistake.breaks,
    wires: applyMistake(references, mistake),
  })),
});

/**
 * A layout made ready for the engine.
 * @throws FileError when its system is not sound
 */
export const makeLayout = ({ spec, alsoCalled, right, wrong }: LayoutFile): Layout => ({
  id: spec.id,
  title: spec.title,
  alsoCalled,
  system: buildChecked(spec, spec.id),
  right,
  wrong,
});
