import { partWorks } from '../../engine/circuit/plain.ts';
import { capital, list, sayWork } from '../../engine/rules/words.ts';
import { lineEnd } from '../circuit/call-route.ts';
import { pickState, type Standing } from '../circuit/standing.ts';
import { findsNothing } from '../circuit/volts.ts';
import { say, sayValves, sayWhyDead, sayWhyLive } from '../circuit/words.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { judgePick, type Option, pickForm, rightPick, type Words } from './pick.ts';
import { sayInputs } from './sight.ts';

/** Something that works or does not, and the load that decides it. */
interface Thing {
  readonly id: string;
  readonly says: string;
  /** The same when it is not so. */
  readonly not: string;
  /** It stands on half mains, which is not enough to drive it. */
  readonly held?: true;
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
  const working = system.parts.flatMap(({ id, kind }, part): Thing[] => {
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
        says: capital(sayWork(system, part, true)),
        not: sayWork(system, part, false),
        works,
        load,
        end,
      },
    ];
  });
  const motors = system.movers.flatMap(({ part, drives, hold }): Thing[] => {
    const { id, name, kind } = system.parts[part] ?? {};
    const load = drives.find((drive) => live.works[drive]) ?? drives[0];
    // A pump that lets water by only while it runs is asked about as a pump.
    if (!kind?.passes || kind.work || load === undefined) return [];
    const motor = `the ${system.loads[load]?.spec.id} of the ${name?.toLowerCase()}`;
    return [
      {
        id: `${id}-motor`,
        says: `${capital(motor)} gets full mains`,
        not: `${motor} does not get full mains`,
        ...(live.works[hold] && { held: true as const }),
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
    const why = ({ load, end, says, not, works, held }: Thing): Words => {
      const feed = (): string => {
        if (system.loads[load]?.spec.ownLoop)
          return works ? 'Its own pair is joined.' : 'Its own pair is not joined.';
        if (held && !works)
          return 'The diode lets half of each wave through: that holds it, and does not drive it.';
        return live.line[end] ? sayWhyLive(standing, end) : sayWhyDead(standing, end);
      };
      const small = `${says.charAt(0).toLowerCase()}${says.slice(1)}`;
      return {
        cause: `${says}: ${works ? 'yes' : 'no'}. ${feed()}`,
        consequence: works
          ? `You would call it a fault that ${small}, and it is as it should be.`
          : `You would wait in vain: with these settings ${not}.`,
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
        'Which of these are true now?',
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
