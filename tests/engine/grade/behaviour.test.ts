import { describe, expect, test } from 'vitest';
import { compareWithLayouts, type Layout, lookCloser } from '../../../src/engine/grade/as-found.ts';
import { partsApart, partsByKind, type Site } from '../../../src/engine/grade/as-found-parts.ts';
import { differing, makeBehaviour, restRows } from '../../../src/engine/grade/behaviour.ts';
import { countLanes, makeJudge } from '../../../src/engine/grade/judge.ts';
import { stateTable } from '../../../src/engine/grade/table.ts';
import type { SystemPart } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { applyMistake } from '../../../src/files/mistake.ts';
import { librarySystems, smallSystems } from '../support/library.ts';

/*
 * Where nothing else is named, what is expected follows from the definition: a behaviour knows nothing of names,
 * numbers and order, so writing the same circuit down in another way may change nothing.
 */

/** What must be there; a test that looks for it has nothing to say without. */
function sure<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('The library has no such thing.');
  return value;
}

const small = new Set(smallSystems().map(([id]) => id));
const systems = librarySystems.filter(({ id, references }) => small.has(id) && references.length > 0);
const library: Layout[] = systems.map(({ spec, references }) => ({ spec, references }));

const ask = (site: Site, layouts = library) => {
  const asking = compareWithLayouts(site, layouts);
  for (let step = asking.next(); ; step = asking.next()) if (step.done) return step.value;
};

/** The layout's own parts and these wires, as a site that names the layout, or as one that nobody has named. */
const onSite = ({ spec }: Layout, wires: readonly Wire[], named: boolean): Site => ({
  parts: spec.parts,
  wires,
  ...(named && { layout: spec.id }),
});

/** The same circuit as somebody else would write it down: parts renamed and in another order, a longer strip, numbered backwards. */
function disguise({ spec }: Layout, wires: readonly Wire[]): Site {
  const matched = [...partsByKind(spec.parts).values()].flat();
  const strips = [...partsByKind(spec.parts, 'joint').values()].flat();
  const idOf = (id: string) =>
    matched.includes(id) ? `x${matched.length - matched.indexOf(id)}` : `${id}-here`;
  const parts: Record<string, SystemPart> = {};
  for (const id of [...matched].reverse()) {
    const { kind, options } = sure(spec.parts[id]);
    parts[idOf(id)] = { kind, name: `Thing ${idOf(id)}`, ...(options && { options }) };
  }
  const ways = (id: string) => Number(spec.parts[id]?.options?.ways ?? 12);
  for (const id of strips) {
    const { kind, name, options } = sure(spec.parts[id]);
    parts[idOf(id)] =
      kind === 'strip'
        ? { kind, name, options: { ways: ways(id) + 3 } }
        : { kind, name, ...(options && { options }) };
  }
  const rename = (terminal: string) => {
    const [id = '', name = ''] = terminal.split('/');
    const way = spec.parts[id]?.kind === 'strip' ? String(ways(id) + 2 - Number(name)) : name;
    return `${idOf(id)}/${way}`;
  };
  return { parts, wires: [...wires].reverse().map(([a, b]): Wire => [rename(b), rename(a)]) };
}

const rows = systems.flatMap((system) =>
  system.references.map((reference) => ({ name: `${system.id}: ${reference.id}`, system, reference })),
);

test.each(rows)(
  '$name is known again with its strip renumbered, its parts renamed and shuffled',
  ({ system, reference }) => {
    const site = disguise(system, reference.wires);
    const { likenesses } = ask(site);
    const own = sure(likenesses.find(({ layout }) => layout === system.id));
    expect(own.differing).toBe(0);
    expect(own.references).toContain(reference.id);
    const closer = lookCloser(site, system, own);
    expect(closer.verdict.accepted).toBe(true);
    expect(closer.misbehaviours).toEqual([]);
  },
);

const mistakes = systems.flatMap((system) =>
  system.mistakes.map((mistake) => ({ name: `${system.id}: ${mistake.id}`, system, mistake })),
);

/** Rules about what may meet, whatever it does: what breaks only these behaves as it should until something fails. */
const joining = new Set([
  'circuits-apart',
  'neutral-earth-apart',
  'green-yellow-live',
  'mains-on-extra-low',
  'extra-low-apart',
]);

describe('a classic mistake on its own layout', () => {
  test.each(mistakes)(
    '$name behaves otherwise, unless nothing it does breaks a rule',
    ({ system, mistake }) => {
      const wires = applyMistake(system.references, mistake);
      const site = onSite(system, wires, true);
      const own = sure(ask(site).likenesses.find(({ layout }) => layout === system.id));
      // The judge's own states, found by rules that know nothing of references: a state that breaks one is no reference's.
      const breaking = stateTable(system.system, wires).filter(({ broken }) =>
        broken.some((id) => !joining.has(id)),
      );
      if (breaking.length === 0) {
        // Such as an earth left off, or advice alone: nothing it does is wrong, and the verdict still says what is.
        const verdict = makeJudge(system.system).judge(wires);
        expect(verdict.findings.map(({ id }) => id).sort()).toEqual(
          expect.arrayContaining([...mistake.breaks, ...mistake.advises].sort()),
        );
        return;
      }
      expect(own.differing).toBeGreaterThan(0);
      const closer = lookCloser(site, system, own);
      expect(closer.verdict.accepted).toBe(false);
      expect(closer.settings).toBeGreaterThan(0);
      expect(closer.misbehaviours.length).toBe(Math.min(40, closer.settings));
      const weight = { danger: 0, fault: 1, advice: 2 };
      const order = closer.verdict.findings.map(({ severity }) => weight[severity]);
      expect(order).toEqual([...order].sort());
    },
  );

  test.each(mistakes)('$name, disguised, is nearest to its own layout', ({ system, mistake }) => {
    const site = disguise(system, applyMistake(system.references, mistake));
    const { likenesses } = ask(site);
    const own = sure(likenesses.find(({ layout }) => layout === system.id));
    expect(own.differing).toBe(likenesses[0]?.differing);
  });
});

const named = (id: string) => {
  const system = sure(systems.find((one) => one.id === id));
  return { system, wires: sure(system.references[0]).wires };
};

test('Two valves that have changed places are known again on a nameless site, but not where the pipes are known', () => {
  const { system, wires } = named('two-two-ports');
  const swap: Record<string, string> = { 'water-valve': 'heating-valve', 'heating-valve': 'water-valve' };
  const cross = (end: string) => end.replace(/^[^/]+/, (id) => swap[id] ?? id);
  const crossed = wires.map(([a, b]): Wire => [cross(a), cross(b)]);
  const of = (site: Site) => sure(ask(site).likenesses.find(({ layout }) => layout === system.id));
  const nameless = of(onSite(system, crossed, false));
  expect(nameless.differing).toBe(0);
  expect(nameless.match).toMatchObject(swap);
  expect(of(onSite(system, crossed, true)).differing).toBeGreaterThan(0);
});

test('A site with a part too many is no layout of the library, and is told which part that is', () => {
  const { system, wires } = named('three-port');
  const parts = { ...system.spec.parts, spare: { kind: 'pump', name: 'Spare pump' } };
  expect(ask({ parts, wires }).likenesses).toEqual([]);
  expect(partsApart({ parts }, system.spec)).toEqual([{ kind: 'pump', more: 1 }]);
  expect(partsApart(system.spec, { parts })).toEqual([{ kind: 'pump', more: -1 }]);
});

test.each(systems.map((system) => [system.id, system] as const))(
  '%s rests in the states that its judge counts, and does there what its table says',
  (_, { system, references }) => {
    const { wires } = sure(references[0]);
    const behaviour = makeBehaviour(system)(wires);
    const table = stateTable(system, wires);
    const found = restRows(behaviour);
    expect(found.length).toBe(makeJudge(system).judge(wires).states);
    const does = (ids: readonly string[], what: string) =>
      ids.some((id) => system.parts.find((part) => part.id === id)?.kind.work?.does === what);
    expect(
      found.map(({ config, works }) => ({
        config,
        fires: does(works, 'fires'),
        pumps: does(works, 'pumps'),
      })),
    ).toEqual(table.map(({ config, fires, pumps }) => ({ config, fires, pumps })));
  },
);

test('A short on site is what it does: the fuse blows and nothing works', () => {
  const { system, wires } = named('three-port');
  const observe = makeBehaviour(system.system);
  const shorted = observe([...wires, ['spur/L', 'spur/N']]);
  const live = restRows(shorted).filter(({ settings }) => settings.supply === 'on');
  expect(live.length).toBeGreaterThan(0);
  expect(live.every(({ blows, works }) => blows && works.length === 0)).toBe(true);
  expect(countLanes(differing(shorted, observe(wires)))).toBeGreaterThan(0);
});
