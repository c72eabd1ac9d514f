import type { Layout } from '../course/layout.ts';
import { FileError, show } from '../files/error.ts';
import type { TextFile } from '../files/site/folder.ts';
import { parseStage } from '../files/stage.ts';
import { stageTroubles } from '../files/stage-fit.ts';
import { oneOf } from '../files/suggest.ts';

/** What the check of stage scripts looks at. */
export interface Stages {
  /** The files of scripts: path and text. */
  readonly files: readonly TextFile[];
  readonly layoutIds: readonly string[];
  readonly layout: (id: string) => Layout;
}

/** Everything that stage scripts say and the engine does not find: see `stageTroubles`. */
export function checkStages({ files, layoutIds, layout }: Stages): FileError[] {
  const known = new Map<string, string>();
  return files.flatMap(({ name: file, text }) => {
    try {
      const script = parseStage(text, file);
      const other = known.get(script.title);
      known.set(script.title, file);
      if (!layoutIds.includes(script.system))
        throw new FileError({
          file,
          place: 'system',
          expected: oneOf(script.system, layoutIds),
          found: show(script.system),
        });
      const troubles = stageTroubles(layout(script.system), script, file);
      if (other === undefined) return troubles;
      const expected = 'a title that no other script has';
      return [new FileError({ file, place: 'title', expected, found: `that of ${other}` }), ...troubles];
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      return [error];
    }
  });
}
