import type { Layout } from '../layout.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { type Clue, clues } from './clues.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';

/** How many layouts are offered at most, and how few will do. */
const OFFERED = 4;
const LEAST = 3;
/** Contradictions that a note tells at most. */
const MOST_SAID = 2;

/** The valves are seen at a glance, so that clue is only given to beginners. */
const OPEN_CLUE = 'valves';

/** A clue with what it shows on the job. */
interface Seen {
  readonly clue: Clue;
  readonly says: string;
}

/** What tells another layout from the one on the job: it shows something else, or nothing of the kind. */
const tells = ({ clue, says }: Seen, other: Layout): boolean => {
  const shows = clue.see(other);
  return shows !== undefined && shows !== says;
};

/** Clues that together leave one layout only: as few as chance finds, or all with `level` 1. */
function evidence(others: readonly Layout[], seen: readonly Seen[], level: Level): Seen[] {
  const left = new Set(others);
  const chosen: Seen[] = [];
  for (const one of seen) {
    if (left.size === 0 && chosen.length >= 5 - level) break;
    const ruled = [...left].filter((other) => tells(one, other));
    if (ruled.length === 0 && level === 3) continue;
    chosen.push(one);
    for (const other of ruled) left.delete(other);
  }
  return left.size === 0 ? chosen : [];
}

function wordsFor(target: Layout, chosen: Layout, given: readonly Seen[]): Words {
  const against = given.filter((one) => tells(one, chosen));
  const said = against
    .slice(0, MOST_SAID)
    .map(({ clue, says }) => `Here: ${says} With “${chosen.title}”: ${clue.see(chosen) ?? ''}`);
  const [first] = against;
  const valves = clues.find(({ id }) => id === OPEN_CLUE);
  const [its, these] = [valves?.see(chosen) ?? '', valves?.see(target) ?? ''];
  const drawing =
    its === these
      ? `It leads you to expect this: ${first?.clue.see(chosen) ?? ''} You would look for a fault where there is none.`
      : `It shows other valves. ${its} This job has others. ${these}`;
  return {
    cause: `It does not fit “${chosen.title}”. ${said.join(' ')}`,
    consequence: `You would wire and test this job by the drawing of “${chosen.title}”. ${drawing}`,
    look: first
      ? `${first.clue.look} With “${chosen.title}” it would be so: ${first.clue.see(chosen) ?? ''}`
      : '',
  };
}

/** Which layout is it, from what is seen and measured? */
export const nameLayout: Maker = {
  id: 'name-layout',
  title: 'Which layout is it?',
  needs: 'layouts',
  produces: false,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layouts = random
      .shuffle(task.layouts ?? [])
      .slice(0, OFFERED)
      .map(shelf.layout);
    if (layouts.length < LEAST) return undefined;
    const [target, ...others] = layouts;
    if (!target) return undefined;
    const usable = clues.filter(({ id }) => id !== OPEN_CLUE || level === 1);
    const seen = random.shuffle(usable).flatMap((clue): Seen[] => {
      const says = clue.see(target);
      return says === undefined ? [] : [{ clue, says }];
    });
    const given = evidence(others, seen, level);
    if (given.length === 0) return undefined;
    const options: Option[] = random.shuffle(layouts).map((layout) => ({
      id: layout.id,
      says: layout.title,
      right: layout === target,
      why: () => wordsFor(target, layout, given),
    }));
    const reasons = others.flatMap((other) => {
      const one = given.find((clue) => tells(clue, other));
      return one
        ? [`${one.says} So it is not “${other.title}”. That would show: ${one.clue.see(other) ?? ''}`]
        : [];
    });
    const [firstOther] = others;
    const firstTells = firstOther && given.find((one) => tells(one, firstOther));
    return {
      id: addressOf(task, seed, level),
      method: 'name-layout',
      ask: `You find this on a job. ${given.map(({ says }) => says).join(' ')} Which layout is it?`,
      form: pickForm(options, false),
      hints: [
        given[0]?.clue.look ?? '',
        'Take the layouts one by one. Ask of each what it would show in the same test, and rule it out when that differs.',
        firstOther && firstTells
          ? `It is not “${firstOther.title}”. That would show: ${firstTells.clue.see(firstOther) ?? ''}`
          : '',
      ],
      steps: [...reasons, `What is left: “${target.title}”.`],
      answer: rightPick(options),
      judge: judgePick(options, false),
    };
  },
};
