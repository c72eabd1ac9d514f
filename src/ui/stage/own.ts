import type { Layout } from '../../course/layout.ts';
import type { StageScript } from '../../course/stage.ts';
import type { SystemSpec } from '../../engine/model/system.ts';
import { buildChecked } from '../../files/build.ts';
import { FileError, show } from '../../files/error.ts';
import { LONGEST_SCRIPT, parseStage } from '../../files/stage.ts';
import { stageTroubles } from '../../files/stage-fit.ts';
import { oneOf } from '../../files/suggest.ts';
import { withLine } from '../../files/yaml-line.ts';
import type { Choice } from '../drawings/desk.svelte.ts';

/** Where the script that was opened last is kept; the tutor's desk puts one here to present it. */
export const OWN_SCRIPT = 'switched-live/stage-script';

/** A script file: its name and what it says. */
export interface OwnFile {
  readonly name: string;
  readonly text: string;
}

/** What the site knows of a system. */
export interface Library {
  readonly spec: SystemSpec;
  readonly choices: readonly Choice[];
  readonly laysOut: boolean;
}

/** A script that fits, with its system; or everything that does not, each trouble with its place. */
export type Opened =
  | { readonly script: StageScript; readonly library: Library }
  | { readonly troubles: readonly string[] };

/**
 * Reads a script and plays it against its system.
 * @param fetchLibrary fetches a system of the site by its id
 * @throws what `fetchLibrary` throws
 */
export async function openScript(
  { name, text }: OwnFile,
  systems: readonly string[],
  fetchLibrary: (id: string) => Promise<Library>,
): Promise<Opened> {
  try {
    if (text.length > LONGEST_SCRIPT) {
      const expected = `at most ${LONGEST_SCRIPT.toLocaleString('en')} letters`;
      throw new FileError({ file: name, place: '', expected, found: text.length.toLocaleString('en') });
    }
    const script = parseStage(text, name);
    if (!systems.includes(script.system)) {
      const expected = oneOf(script.system, systems);
      throw new FileError({ file: name, place: 'system', expected, found: show(script.system) });
    }
    const library = await fetchLibrary(script.system);
    const layout: Layout = {
      id: script.system,
      title: library.spec.title,
      alsoCalled: [],
      system: buildChecked(library.spec, name),
      right: library.choices,
      wrong: [],
    };
    const troubles = stageTroubles(layout, script, name, () => library.laysOut);
    return troubles.length > 0
      ? { troubles: troubles.map((trouble) => withLine(trouble, text).message) }
      : { script, library };
  } catch (error) {
    if (error instanceof FileError)
      return { troubles: [withLine(error, text.slice(0, LONGEST_SCRIPT)).message] };
    throw error;
  }
}

/** The script that the device keeps. */
export function keptScript(): OwnFile | undefined {
  try {
    const { name, text } = JSON.parse(localStorage.getItem(OWN_SCRIPT) ?? '{}') as Partial<OwnFile>;
    return typeof name === 'string' && typeof text === 'string' ? { name, text } : undefined;
  } catch {
    return undefined;
  }
}

export function keepScript(file: OwnFile): void {
  try {
    localStorage.setItem(OWN_SCRIPT, JSON.stringify(file));
  } catch {
    /* nothing to keep it in: it lasts for the page */
  }
}
