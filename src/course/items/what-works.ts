import { partWorks } from '../../engine/circuit/plain.ts';
import { capital, list } from '../../engine/rules/words.ts';
import { lineEnd } from '../circuit/call-route.ts';
import { pickState, type Standing } from '../circuit/standing.ts';
import { findsNothing } from '../circuit/volts.ts';
import { say, sayValves, sayWhyDead, sayWhyLive } from '../circuit/words.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';
import { sayInputs } from './sight.ts';

const DOES = { fires: 'fires', pumps: 'runs', heats: 'heats' } as const;

/** Something that works or does not, and the load that decides it. */
interface Thing {
  readonly id: string;
  readonly says: string;
  readonly works: boolean;
  readonly load: number;
  /** The end of the load that line comes in at. */
  readonly end: number;
}

function things(standing: Standing): Thing[] {
  const { system, live } = standing;
  const nothing = findsNothing(standing);
  const endOf = (l: number): number => {
    const { a, b } = system.loads[l] ?? { a: 0, b: 0 };
    return lineEnd(live, a, b);
  };
  const working = system.parts.flatMap(({ id, name, kind }, part): Thing[] => {
    if (!kind.work) return [];
    const needs = kind.work.needs.flat();
    const loads = system.loads.flatMap((load, l) =>
      load.part === part && needs.includes(load.spec.id) ? [l] : [],
    );
    const load = loads.find((l) => !live.works[l]) ?? loads.at(-1);
    if (load === undefined) return [];
    const works = partWorks(system, live, part);
    const end = endOf(load);
    // What gets some volts through another load may hum or stutter: nobody can say that it does nothing.
    if (!works && !live.line[end] && !nothing(end)) return [];
    return [
      {
        id,
        says: `The ${name.toLowerCase()} ${DOES[kind.work.does]}`,
        works,
        load,
        end,
      },
    ];
  });
  const motors = system.movers.flatMap(({ part, drives }): Thing[] => {
    const { id, name, kind } = system.parts[part] ?? {};
    const load = drives.find((drive) => live.works[drive]) ?? drives[0];
    if (!kind?.passes || load === undefined) return [];
    return [
      {
        id: `${id}-motor`,
        says: `The motor of the ${name?.toLowerCase()} gets full mains`,
        works: live.works[load] === true,
        load,
        end: endOf(load),
      },
    ];
  });
  return [...working, ...motors];
}

/** Which parts work in a state in which the system can rest? */
export const whatWorks: Maker = {
  id: 'what-works',
  title: 'What works now?',
  needs: 'layout',
  produces: false,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const wires = random.pick(layout.right).wires;
    const standing = pickState(layout, wires, random, level);
    if (!standing) return undefined;
    const { live, config } = standing;
    const all = random.shuffle(things(standing)).slice(0, 3 + level);
    if (all.length < 2 || !all.some(({ works }) => works)) return undefined;
    const why = ({ load, end, says, works }: Thing): Words => {
      const feed = system.loads[load]?.spec.ownLoop
        ? works
          ? 'Its own pair is joined.'
          : 'Its own pair is not joined.'
        : live.line[end]
          ? sayWhyLive(standing, end)
          : sayWhyDead(standing, end);
      return {
        cause: `${says}: ${works ? 'yes' : 'no'}. ${feed}`,
        consequence: works
          ? `You would call it a fault that ${says.charAt(0).toLowerCase()}${says.slice(1)}, and it is as it should be.`
          : `You would wait for it in vain: with these settings it is not so that ${says.charAt(0).toLowerCase()}${says.slice(1)}.`,
        look: `${says}? Go back from its feed to the supply, contact by contact, with these settings.`,
        scene: {
          layout: layout.id,
          wires,
          config,
          lit: [system.nodes[end] ?? ''].filter((name) => !name.includes('(')),
        },
      };
    };
    const options: Option[] = all.map((thing) => ({
      id: thing.id,
      says: thing.says,
      right: thing.works,
      why: () => why(thing),
    }));
    const [first] = all;
    return {
      id: addressOf(task, seed, level),
      method: 'what-works',
      ask: say(
        `${layout.title}. ${capital(sayInputs(system, config))}.`,
        sayValves(standing),
        `Which of these hold?`,
      ),
      scene: { layout: layout.id, wires, config, dark: true },
      form: pickForm(options, true),
      hints: [
        'Take each part by itself: does line get to it, and is its neutral sound?',
        'A part works between line and neutral. Line comes through switches, thermostats and end switches that are made.',
        first ? why(first).cause : '',
      ],
      steps: [
        ...all.map((thing) => why(thing).cause),
        `So: ${list(all.filter(({ works }) => works).map(({ says }) => says.charAt(0).toLowerCase() + says.slice(1)))}.`,
      ],
      answer: rightPick(options),
      judge: judgePick(options, true),
    };
  },
};
