import { UnknownName } from '../course/claim.ts';
import type { Layout } from '../course/layout.ts';
import { expectTroubles, playStage, type StageScript, stageWires } from '../course/stage.ts';
import { checkWires } from './attempt.ts';
import { FileError } from './error.ts';
import { placeAt } from './place.ts';

/**
 * What a stage script says of its layout and is not so: names that are not there, a step in which the valves never come
 * to rest, what a step expects and the engine does not find. Each names its place in the file.
 * @param drawsPipes whether the pipework of a system can be drawn
 */
export function stageTroubles(
  layout: Layout,
  script: StageScript,
  file: string,
  drawsPipes: (layout: Layout) => boolean = () => true,
): FileError[] {
  const troubles: FileError[] = [];
  const fail = (path: readonly PropertyKey[], expected: string, found: string) => {
    troubles.push(new FileError({ file, place: placeAt(path), expected, found }));
  };
  const name = (path: readonly PropertyKey[], { expected, found }: UnknownName) =>
    fail(path, expected, found);
  try {
    checkWires(layout.system, script.wires ?? [], file, ['wires']);
    const wires = stageWires(layout, script);
    const unsound = new Set<number>();
    const states = playStage(layout.system, wires, script, (step, key, error) => {
      unsound.add(step);
      name(['steps', step, key], error);
    });
    states.forEach((state, k) => {
      const { expect, view = k === 0 ? script.view : undefined } = script.steps[k] ?? {};
      if (state.states.length === 0)
        fail(['steps', k], 'valves that come to rest', 'that they never do with these settings');
      if (view?.includes('pipework') && !drawsPipes(layout))
        fail(
          script.steps[k]?.view ? ['steps', k, 'view'] : ['view'],
          'strip or circuit: the pipework of this layout cannot be drawn',
          '"pipework"',
        );
      if (!expect || unsound.has(k)) return;
      for (const trouble of expectOf(wires, state, expect, (error) => name(['steps', k, 'expect'], error)))
        fail(['steps', k, 'expect'], 'what holds in this state', `that ${trouble}`);
    });
  } catch (error) {
    if (error instanceof FileError) troubles.push(error);
    else if (error instanceof UnknownName) name(['wiring'], error);
    else throw error;
  }
  return troubles;
}

function expectOf(
  wires: Parameters<typeof expectTroubles>[0],
  state: Parameters<typeof expectTroubles>[1],
  expected: Parameters<typeof expectTroubles>[2],
  unknown: (error: UnknownName) => void,
): string[] {
  try {
    return expectTroubles(wires, state, expected);
  } catch (error) {
    if (!(error instanceof UnknownName)) throw error;
    unknown(error);
    return [];
  }
}
