import type { Wire } from '../../engine/model/wiring.ts';
import { applyMistake } from '../mistake.ts';
import { parseSystem, type SystemFile } from '../system.ts';
import { filesIn } from './folder.ts';

/** A wiring to try failures on: a right one, or a classic wrong one. */
export interface Choice {
  readonly id: string;
  readonly title: string;
  readonly wires: readonly Wire[];
}

export interface WhatIfPage {
  readonly spec: SystemFile['spec'];
  readonly choices: readonly Choice[];
}

/**
 * Every system with the wirings that failures can be tried on: all right ones, then all wrong ones.
 * @throws FileError naming the file and the place when a system does not parse
 */
export function whatIfPages(root?: string): WhatIfPage[] {
  return filesIn('content/systems', '.yaml', root).map(({ name, text }) => {
    const { spec, references, mistakes } = parseSystem(text, name);
    const wrong = mistakes.map((mistake) => ({
      id: mistake.id,
      title: `Wrong: ${mistake.title.charAt(0).toLowerCase()}${mistake.title.slice(1)}`,
      wires: applyMistake(references, mistake),
    }));
    return { spec, choices: [...references.map(({ id, title, wires }) => ({ id, title, wires })), ...wrong] };
  });
}
