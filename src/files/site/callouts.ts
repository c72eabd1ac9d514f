import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type CalloutFile, parseCallout } from '../callout.ts';
import { type DoubleFault, parseDoubleFaults } from '../double-faults.ts';
import { filesIn } from './folder.ts';

export const CALLOUTS = 'content/callouts';
export const DOUBLE_FAULTS = 'content/double-faults.yaml';
const ENDING = '.yaml';

/**
 * Every authored callout, in the order of the files' names.
 * @throws FileError naming the file and the place when one is not sound
 */
export const loadCallouts = (root?: string): CalloutFile[] =>
  filesIn(CALLOUTS, ENDING, root).map(({ name, text }) =>
    parseCallout(text, `${CALLOUTS}/${name}`, name.slice(0, -ENDING.length)),
  );

/**
 * The chosen double faults of every system.
 * @throws FileError naming the place when the file is not sound
 */
export function loadDoubleFaults(root: string = process.cwd()): readonly DoubleFault[] {
  const path = join(root, DOUBLE_FAULTS);
  return existsSync(path) ? parseDoubleFaults(readFileSync(path, 'utf8'), DOUBLE_FAULTS) : [];
}
