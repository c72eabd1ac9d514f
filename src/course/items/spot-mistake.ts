import { evaluate } from '../../engine/circuit/plain.ts';
import type { Config, System } from '../../engine/model/system.ts';
import { viewState } from '../../engine/rules/view.ts';
import { sayNode } from '../../engine/rules/words.ts';
import type { Layout, RightWiring, WrongWiring } from '../layout.ts';
import { makeRandom, type Random } from '../random.ts';
import { addressOf, type Level, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';
import { type Sight, sayInputs, saySight, see, unlike } from './sight.ts';
import { type States, statesOf } from './states.ts';

/** How many answers are offered. */
const OFFERED: Readonly<Record<Level, number>> = { 1: 3, 2: 4, 3: 5 };

/** The answer that nothing is wrong: the right wiring. */
const SOUND = 'nothing-wrong';

/** What a wiring shows in every state in which it can rest with the settings of the symptom. */
interface Suspect {
  readonly wiring: RightWiring;
  readonly says: string;
  readonly rests: readonly { readonly config: Config; readonly sight: Sight }[];
}

function suspect(system: System, wiring: RightWiring, says: string, states: States, inputs: number): Suspect {
  const rests = states.restsAt(inputs).map((place) => {
    const config = { inputs, place };
    return { config, sight: see(system, wiring.wires, config) };
  });
  return { wiring, says, rests };
}

/** A mistake of the layout at work in one state that shows it. */
interface Case {
  readonly mistake: WrongWiring;
  readonly config: Config;
  /** Why it fails there: the engine's own explanation. */
  readonly why: string;
  readonly function: string;
}

function findCase({ system, wrong }: Layout, random: Random, only?: readonly string[]): Case | undefined {
  const kept = only ? wrong.filter(({ id }) => only.includes(id)) : wrong;
  if (kept.length === 0) return undefined;
  const mistake = random.pick(kept);
  const failing = statesOf(system, mistake.wires)?.failing() ?? [];
  if (failing.length === 0) return undefined;
  const { config, rule } = random.pick(failing);
  const why = rule.explain(viewState(system, mistake.wires, config)).says;
  return { mistake, config, why, function: rule.function };
}

/** The first terminal that is live in one state and dead in the other, in words; it tells the two wirings apart. */
function sayReading(system: System, here: Suspect, inCase: Case): string | undefined {
  const rest = here.rests[0];
  if (!rest) return undefined;
  const there = evaluate(system, here.wiring.wires, rest.config).line;
  const real = evaluate(system, inCase.mistake.wires, inCase.config).line;
  for (let node = 0; node < system.terminals; node++) {
    if (there[node] === real[node]) continue;
    const [would, does] = there[node] ? ['live', 'dead'] : ['dead', 'live'];
    return `Test ${sayNode(system, node)} with these settings: it is ${does} here, and would be ${would} with “${here.says}”.`;
  }
  return undefined;
}

function wordsFor(layout: Layout, here: Suspect, inCase: Case, shown: Sight): Words {
  const { system } = layout;
  const rest = here.rests[0];
  const missing = rest ? unlike(shown, rest.sight) : [];
  const instead = rest
    ? `With “${here.says}” and these settings you would see this instead: ${saySight(rest.sight)}`
    : `With “${here.says}” and these settings the valves never come to rest.`;
  const watch = `Compare what you see with “${here.says}”: ${saySight(shown)}`;
  return {
    cause: instead,
    consequence:
      here.wiring.id === SOUND
        ? `You would leave the job as it is. ${missing.join(' ')} It stays like that.`
        : `You would look for “${here.says}”, find that part of the wiring sound, and still see this. ${missing.join(' ')}`,
    look: sayReading(system, here, inCase) ?? watch,
    ...(rest ? { scene: { layout: layout.id, wires: here.wiring.wires, config: rest.config } } : {}),
  };
}

/** A symptom, worked out from one wrong wiring: which one shows it? */
export const spotMistake: Maker = {
  id: 'spot-mistake',
  title: 'What is wired wrong?',
  needs: 'layout',
  produces: false,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system, right, wrong } = layout;
    const found = findCase(layout, random, task.only);
    const [sound] = right;
    if (!found || !sound) return undefined;
    const { mistake, config } = found;
    const { inputs } = config;
    const valves = level < 3;
    const told = (sight: Sight) => saySight(sight, valves);
    const shown = see(system, mistake.wires, config);
    const others = [
      { wiring: { ...sound, id: SOUND }, says: 'Nothing is wired wrong', of: sound },
      ...wrong.filter((one) => one !== mistake).map((one) => ({ wiring: one, says: one.title, of: one })),
    ].flatMap(({ wiring, says, of }) => {
      const states = statesOf(system, of.wires);
      return states ? [suspect(system, wiring, says, states, inputs)] : [];
    });
    const clean = others[0];
    const shows = ({ rests }: Suspect) => rests.some(({ sight }) => told(sight) === told(shown));
    // A symptom that the right wiring shows too is none.
    if (!clean || shows(clean) || !clean.rests[0]) return undefined;
    // On higher levels the others are such as fail in the same way.
    const like = (one: Suspect) =>
      Number(
        wrong.some(
          ({ id, breaks }) => id === one.wiring.id && breaks.some((rule) => mistake.breaks.includes(rule)),
        ),
      );
    const unshown = random.shuffle(others.filter((one) => !shows(one)));
    if (level > 1) unshown.sort((a, b) => like(b) - like(a));
    const offered = unshown.slice(0, OFFERED[level] - 1);
    if (offered.length < OFFERED[level] - 1) return undefined;
    const options: Option[] = random.shuffle([
      {
        id: mistake.id,
        says: mistake.title,
        right: true,
        why: () => ({ cause: '', consequence: '', look: '' }),
      },
      ...offered.map((one) => ({
        id: one.wiring.id,
        says: one.says,
        right: false,
        why: () => wordsFor(layout, one, found, shown),
      })),
    ]);
    const should = saySight(clean.rests[0].sight);
    return {
      id: addressOf(task, seed, level),
      method: 'spot-mistake',
      ask: `${layout.title}. The settings are: ${sayInputs(system, config)}. ${told(shown)} Which of these explains it?`,
      scene: { layout: layout.id, wires: sound.wires, config: clean.rests[0].config, dark: true },
      form: pickForm(options, false),
      hints: [
        `First say what it should do with these settings. ${should}`,
        found.function,
        unlike(shown, clean.rests[0].sight).join(' '),
      ],
      steps: [
        `With these settings a right wiring does this: ${should}`,
        `Here it is otherwise: ${unlike(shown, clean.rests[0].sight).join(' ')}`,
        found.why,
        `That is what “${mistake.title}” does: ${mistake.says}`,
      ],
      answer: rightPick(options),
      judge: judgePick(options, false),
    };
  },
};
