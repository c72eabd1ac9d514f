import { joinedTo, wireJoints } from '../../engine/circuit/plain.ts';
import { type Judging, judgeFor } from '../../engine/grade/judge-for.ts';
import type { Found, Verdict } from '../../engine/grade/verdict.ts';
import { partOf, type System } from '../../engine/model/system.ts';
import { type Wire, wireKey } from '../../engine/model/wiring.ts';
import { capital, list, sayNode } from '../../engine/rules/words.ts';
import type { Answer, Judgement, Lead, Note } from '../item.ts';
import type { Layout } from '../layout.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { findingNote } from './finding.ts';

/** A lead that was lifted, and the way of the strip that it came from. */
interface Lifted extends Lead {
  /** As it stands inside a sentence: "three-port valve orange". */
  readonly name: string;
  readonly home: string;
  readonly does: string;
}

const judgings = new WeakMap<System, Judging>();

function judgingOf(system: System): Judging {
  const judging = judgings.get(system) ?? judgeFor(system);
  judgings.set(system, judging);
  return judging;
}

const nodeOf = (system: System, terminal: string): number => system.nodeOf.get(terminal) ?? -1;

const isWay = (system: System, terminal: string): boolean =>
  partOf(system, nodeOf(system, terminal)).kind.kind === 'strip';

/** Every lead that a single wire lands on the strip. */
function leadsOf(system: System, wires: readonly Wire[]): Lifted[] {
  return wires.flatMap(([a, b]) => {
    const [id, home] = isWay(system, a) ? [b, a] : [a, b];
    if (!isWay(system, home) || isWay(system, id)) return [];
    if (wires.filter((wire) => wire.includes(id)).length > 1) return [];
    const node = nodeOf(system, id);
    const part = partOf(system, node);
    const spec = part.kind.terminals.find((terminal) => id === `${part.id}/${terminal.id}`);
    const name = sayNode(system, node);
    return spec ? [{ id, home, name, says: capital(name), core: spec.core, does: spec.does }] : [];
  });
}

/** Ways of the strip that are in use, and the first spare one, in the order of their numbers. */
function waysOf(system: System, wires: readonly Wire[], kept: readonly Wire[]) {
  const all = system.nodes.slice(0, system.terminals).filter((terminal) => isWay(system, terminal));
  const used = new Set(wires.flat());
  const spare = all.find((way) => !used.has(way));
  return all
    .filter((way) => used.has(way) || way === spare)
    .map((id) => ({
      id,
      says: `${capital(sayNode(system, nodeOf(system, id)))}: ${sayLanded(system, kept, id)}`,
    }));
}

/** What is landed on a way: "programmer L and boiler L". */
function sayLanded(system: System, wires: readonly Wire[], way: string): string {
  const ends = wires.flatMap(([a, b]) => (a === way ? [b] : b === way ? [a] : []));
  return ends.length > 0 ? list(ends.map((end) => sayNode(system, nodeOf(system, end)))) : 'nothing else';
}

/** One or more leads of a right wiring have come off the strip: where does each go? */
export const placeLead: Maker = {
  id: 'place-lead',
  title: 'Where does the lead go?',
  needs: 'layout',
  produces: true,
  make(shelf, task, seed, level) {
    const random = makeRandom(seed);
    const layout = shelf.layout(random.pick(task.layouts ?? []));
    const { system } = layout;
    const { wires } = random.pick(layout.right);
    const all = leadsOf(system, wires);
    // A lead is named part/terminal.
    const offered = task.only ? all.filter(({ id }) => task.only?.includes(id.split('/')[0] ?? '')) : all;
    const judging = judgingOf(system);
    const without = ({ id, home }: Lifted): Verdict =>
      judging.judge(wires.filter((wire) => wireKey(wire) !== wireKey([id, home])));
    // A lead that could as well hang free asks nothing.
    const loose: { readonly lead: Lifted; readonly found: Found }[] = [];
    for (const lead of random.shuffle(offered)) {
      if (loose.length === level) break;
      const found = without(lead).findings.find(isGrave);
      if (found) loose.push({ lead, found });
    }
    if (loose.length < level && !task.only) return undefined;
    const leads = loose.map(({ lead }) => lead);
    const lifted = new Set(leads.map(({ id, home }) => wireKey([id, home])));
    const kept = wires.filter((wire) => !lifted.has(wireKey(wire)));
    const ways = waysOf(system, wires, kept);
    const [first] = loose;
    if (!first) return undefined;
    const { lead: one, found } = first;
    const names = list(leads.map(({ name }) => name));
    const mates = mateParts(system, kept, one);
    const step =
      level > 1
        ? `Land ${one.name} on ${sayNode(system, nodeOf(system, one.home))}.`
        : mates.length > 0
          ? `It has to be joined to the ${list(mates)}.`
          : `It has to be joined to something that is not beside it now.`;
    return {
      id: addressOf(task, seed, level),
      method: 'place-lead',
      ask:
        leads.length === 1
          ? `One lead has come off the strip: ${names}. Land it so that everything works as it should.`
          : `${leads.length} leads have come off the strip: ${names}. Land them so that everything works as it should.`,
      scene: {
        layout: layout.id,
        wires: kept,
        config: { inputs: 0, place: 0 },
        lit: leads.map(({ id }) => id),
      },
      form: {
        kind: 'place',
        leads: leads.map(({ id, says, core }) => ({ id, says, core })),
        ways,
      },
      hints: [
        `Think what fails while ${one.name} hangs free. ${found?.says ?? ''}`,
        `${one.says}: ${one.does}`,
        step,
      ],
      steps: leads.map(
        ({ says, does, home }) =>
          `${says}: ${does} So it goes to ${sayNode(system, nodeOf(system, home))}, to ${sayLanded(system, kept, home)}.`,
      ),
      answer: { kind: 'place', landed: Object.fromEntries(leads.map(({ id, home }) => [id, home])) },
      judge: judgeLandings(layout, kept, leads),
    };
  },
};

const isGrave = ({ severity }: Found): boolean => severity !== 'advice';

/** Names of the parts that a lead is joined to when it is at home. */
const mateParts = (system: System, kept: readonly Wire[], { home }: Lifted): string[] => {
  const joined = joinedTo(wireJoints(system, kept), nodeOf(system, home));
  const parts = system.parts.filter(
    ({ kind }, part) =>
      kind.kind !== 'strip' && joined.some((is, node) => is && system.partOfNode[node] === part),
  );
  return parts.map(({ name }) => name.toLowerCase());
};

function judgeLandings({ id: layout, system }: Layout, kept: readonly Wire[], leads: readonly Lifted[]) {
  const judging = judgingOf(system);
  const joints = wireJoints(system, kept);
  return (answer: Answer): Judgement => {
    const landed = answer.kind === 'place' ? answer.landed : {};
    const wayOf = ({ id }: Lifted): string | undefined => {
      const way = landed[id];
      return way !== undefined && system.nodeOf.has(way) && isWay(system, way) ? way : undefined;
    };
    const atHome = (lead: Lifted): boolean => {
      const way = wayOf(lead);
      return way !== undefined && joinedTo(joints, nodeOf(system, lead.home))[nodeOf(system, way)] === true;
    };
    const wired = (where: (lead: Lifted) => string | undefined): Wire[] => [
      ...kept,
      ...leads.flatMap((lead): Wire[] => {
        const way = where(lead);
        return way === undefined ? [] : [[lead.id, way]];
      }),
    ];
    const sayPlace = (lead: Lifted): string => {
      const way = wayOf(lead);
      if (way === undefined) return `${lead.says} hangs free.`;
      return `You landed ${lead.name} on ${sayNode(system, nodeOf(system, way))}, with ${sayLanded(system, kept, way)}.`;
    };

    const all = wired(wayOf);
    const whole = judging.judge(all);
    if (whole.accepted) return { right: true, notes: [] };
    const astray = leads.filter((lead) => !atHome(lead));
    // Each lead on its own, the others at home: so that every note is about one lead and what it alone does.
    const told = astray.flatMap((lead) => {
      const wires = wired((other) => (other === lead ? wayOf(lead) : other.home));
      const { findings } = astray.length === 1 ? whole : judging.judge(wires);
      const [found, ...others] = findings.filter(isGrave);
      return found ? [{ lead, found, others, wires }] : [];
    });
    told.sort((a, b) => Number(a.found.severity !== 'danger') - Number(b.found.severity !== 'danger'));
    const notes: Note[] = told.map(({ lead, found, wires }) =>
      findingNote(system, layout, wires, found, lead.id, sayPlace(lead)),
    );
    const together = whole.findings.find(
      (one) =>
        isGrave(one) && !told.some(({ found, others }) => [found, ...others].some(({ id }) => id === one.id)),
    );
    if (together && (notes.length === 0 || together.severity === 'danger'))
      notes.unshift(findingNote(system, layout, all, together, '', astray.map(sayPlace).join(' ')));
    return { right: false, notes };
  };
}
