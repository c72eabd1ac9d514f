import type { Candidate } from '../../engine/diagnose/candidate.ts';
import type { System } from '../../engine/model/system.ts';
import { list } from '../../engine/rules/words.ts';

/** So few are told one by one; so many parts are told by name. */
const ONE_BY_ONE = 3;
const NAMED = 4;

/** What a candidate is about: one part, or one kind of thing that people do to wires. */
type Subject =
  | { readonly part: number }
  | { readonly wires: keyof typeof WIRES }
  | { readonly other: string };

const WIRES = {
  broken: ['broken wire', 'broken wires'],
  landed: ['wire landed wrong', 'wires landed wrong'],
  link: ['link too many', 'links too many'],
} as const;

function subjectOf({ failures, misplaced, strays }: Candidate): Subject {
  const faults = failures.length + misplaced.length + strays.length;
  if (faults === 0) return { other: 'that nothing is wrong' };
  if (faults > 1) return { other: 'two faults at once' };
  const [failure] = failures;
  if (failure) return 'wire' in failure ? { wires: 'broken' } : { part: failure.part };
  return { wires: misplaced.length > 0 ? 'landed' : 'link' };
}

const keyOf = (candidate: Candidate): string => JSON.stringify(subjectOf(candidate));

/** A candidate inside a sentence: “the pump does not run”. */
export const sayFault = ({ says }: Candidate): string => says.charAt(0).toLowerCase() + says.slice(1);

/**
 * What a test ruled out, in a sentence: the parts that it cleared, then how many of each other kind. `before` and `after`
 * are the candidates that were possible.
 */
export function sayCleared(
  system: System,
  before: readonly Candidate[],
  after: readonly Candidate[],
): string {
  const still = new Set(after.map(({ id }) => id));
  const out = before.filter(({ id }) => !still.has(id));
  if (out.length === 0) return 'It ruled nothing out: whatever was left would have shown the same.';
  if (out.length <= ONE_BY_ONE) return `It ruled out that ${list(out.map(sayFault))}.`;
  const [all, left] = [Map.groupBy(before, keyOf), Map.groupBy(after, keyOf)];
  const cleared: string[] = [];
  const partly: string[] = [];
  const rest: string[] = [];
  for (const [key, some] of Map.groupBy(out, keyOf)) {
    const [gone, were] = [some.length, all.get(key)?.length ?? 0];
    const subject = JSON.parse(key) as Subject;
    const whole = !left.has(key);
    if ('part' in subject) {
      const name = `the ${system.parts[subject.part]?.name.toLowerCase()}`;
      if (whole) cleared.push(name);
      else partly.push(`${gone} of ${were} faults of ${name}`);
    } else if ('wires' in subject) {
      const [one, many] = WIRES[subject.wires];
      rest.push(whole ? `every ${one}` : `${gone} of ${were} ${many}`);
    } else rest.push(subject.other);
  }
  const named = (words: readonly string[], more: string) =>
    words.length <= NAMED ? words : [...words.slice(0, NAMED - 1), `${words.length - NAMED + 1} ${more}`];
  const ruled = [...named(partly, 'parts in part'), ...rest];
  const clears = cleared.length > 0 ? `It cleared ${list(named(cleared, 'parts more'))}.` : '';
  if (ruled.length === 0) return clears;
  return `${clears ? `${clears} It also ruled out` : 'It ruled out'} ${list(ruled)}.`;
}
