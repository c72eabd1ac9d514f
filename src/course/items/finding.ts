import type { Found } from '../../engine/grade/verdict.ts';
import type { Settings, System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { list, sayNode } from '../../engine/rules/words.ts';
import type { Note } from '../item.ts';
import { saySight, see } from './sight.ts';

/** Terminals that a pointer names at most. */
const MOST_NAMED = 4;

const saySteps = (system: System, steps: readonly Settings[]): string =>
  steps
    .map((step) =>
      list(
        system.inputs.flatMap(({ id, label }) => {
          const setting = step[id];
          return setting === undefined ? [] : [`${label.toLowerCase()} ${setting}`];
        }),
      ),
    )
    .join(', then ');

/**
 * A finding of the judge as a note on one thing in an answer, with the state that shows it.
 * @param about id of the lead, wire or other thing
 * @param did what the learner did, in a sentence
 */
export function findingNote(
  system: System,
  layout: string,
  wires: readonly Wire[],
  found: Found,
  about: string,
  did: string,
): Note {
  const { config, steps, terminals, fails, says, compare, failing } = found;
  const named = terminals
    .slice(0, MOST_NAMED)
    .map((terminal) => sayNode(system, system.nodeOf.get(terminal) ?? 0));
  const at = named.length > 0 ? ` Start at ${list(named)}.` : '';
  const wayThere = steps.length > 0 ? `From cold, set ${saySteps(system, steps)}. ` : '';
  const outcome = steps.length > 0 ? `${fails}. ${saySight(see(system, wires, config))}` : found.function;
  const often = failing > 1 ? ` It is so in ${failing} states.` : '';
  return {
    about,
    cause: `${did} ${says}`,
    consequence: `${outcome}${often}`,
    look: `${wayThere}${compare}${at}`,
    scene: { layout, wires, config, lit: terminals },
  };
}
