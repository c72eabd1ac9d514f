import { expect, test } from 'vitest';
import { makeBench } from '../../../../src/engine/diagnose/bench.ts';
import { allCandidates, type Callout } from '../../../../src/engine/diagnose/callout.ts';
import { type Candidate, candidateOf } from '../../../../src/engine/diagnose/candidate.ts';
import { begin, go, type Visit } from '../../../../src/engine/diagnose/replay.ts';
import { type Wire, wireKey } from '../../../../src/engine/model/wiring.ts';
import { layoutFile, makeLayout } from '../../../../src/files/layout-file.ts';
import { systemPages } from '../../../../src/files/site/systems.ts';
import { drawFan } from '../../../../src/ui/callout/board/fan.ts';
import { landedCores, seenWires } from '../../../../src/ui/callout/board/seen.ts';

const layouts = systemPages().map((page) => makeLayout(layoutFile(page)));
function layoutOf(name: string) {
  const layout = layouts.find(({ id }) => id === name);
  const drawn = layout?.right[0]?.wires;
  if (!layout || !drawn) throw new Error(`there is no layout "${name}"`);
  return { system: layout.system, wires: drawn };
}
const { system, wires } = layoutOf('three-port');

function visitTo(fault: Candidate): Visit {
  const callout: Callout = { system, wires, fault, complaints: [], found: { supply: 'on' }, seed: 1 };
  return begin(makeBench(system), callout);
}
const endsOf = (visit: Visit) => seenWires(visit).map(({ ends }) => wireKey(ends));
const faultWith = (id: string): Candidate => {
  const found = allCandidates(system, wires).find((one) => one.id === id);
  if (!found) throw new Error(`there is no candidate "${id}"`);
  return found;
};
const ORANGE: Wire = ['strip/6', 'three-port/orange'];

test('With nothing wrong, what is seen is the drawing', () => {
  expect(endsOf(visitTo(candidateOf(system, [])))).toEqual(wires.map(wireKey));
});

test('A broken core looks whole', () => {
  expect(endsOf(visitTo(faultWith(`wire: ${wireKey(ORANGE)}`)))).toEqual(wires.map(wireKey));
});

test('A wire landed wrong lies where it was landed, in its own colour', () => {
  const visit = visitTo(
    faultWith(`landed: ${wireKey(ORANGE)} as ${wireKey(['strip/7', 'three-port/orange'])}`),
  );
  expect(endsOf(visit)).not.toContain(wireKey(ORANGE));
  const moved = seenWires(visit).find(({ ends }) => ends.includes('three-port/orange'));
  expect(moved).toMatchObject({ core: 'orange' });
  expect(moved?.ends).toContain('strip/7');
});

test('A link too many is there to be seen', () => {
  const stray: Wire = ['strip/2', 'strip/3'];
  expect(endsOf(visitTo(faultWith(`link: ${wireKey(stray)}`)))).toContain(wireKey(stray));
});

test('A lifted wire is seen to hang free', () => {
  const fault = candidateOf(system, []);
  const callout: Callout = { system, wires, fault, complaints: [], found: {}, seed: 1 };
  const bench = makeBench(system);
  const visit = go(bench, callout, begin(bench, callout), { do: 'lift', wire: ORANGE });
  const lifted = seenWires(visit).filter((one) => one.lifted);
  expect(lifted.map(({ ends }) => wireKey(ends))).toEqual([wireKey(ORANGE)]);
});

test('Which terminal the far end of a core is in shows only with the cover there off', () => {
  const seen = seenWires(visitTo(candidateOf(system, [])));
  const at = (open: readonly string[], terminal: string) =>
    landedCores(system, seen, new Set(open))
      .get(terminal)
      ?.map(({ farPart, farMark }) => [farPart, farMark]);
  expect(at(['strip'], 'strip/3')).toEqual([
    ['room-stat', undefined],
    ['three-port', 'white'],
  ]);
  expect(at(['strip', 'room-stat'], 'strip/3')).toContainEqual(['room-stat', 'CALL']);
  expect(at(['room-stat'], 'room-stat/CALL')).toEqual([['strip', undefined]]);
});

test.each(layouts.map((layout) => [layout.id, layout] as const))(
  'Every end of every wire of %s lies in a terminal, and every core reaches a cable inside its enclosure',
  (_, { system: one, right }) => {
    for (const { wires: drawn } of right) {
      const fault = candidateOf(one, []);
      const visit = begin(makeBench(one), {
        system: one,
        wires: drawn,
        fault,
        complaints: [],
        found: {},
        seed: 1,
      });
      const landed = landedCores(one, seenWires(visit), new Set());
      expect([...landed.values()].flat()).toHaveLength(2 * drawn.length);
      for (const { id, kind } of one.parts) {
        const cores = kind.terminals.map((terminal) => landed.get(`${id}/${terminal.id}`) ?? []);
        // A strip, and what is as long as one, stands upright and has no fan.
        if (cores.length === 0 || cores.length > 9 || kind.kind === 'strip') continue;
        const fan = drawFan(cores, 304);
        expect(fan.cores).toHaveLength(cores.flat().length);
        expect(new Set(fan.cables.map(({ part }) => part))).toEqual(
          new Set(cores.flat().map(({ far }) => far.slice(0, far.lastIndexOf('/')))),
        );
        for (const { x, width } of fan.cables) {
          expect(x - width / 2).toBeGreaterThanOrEqual(0);
          expect(x + width / 2).toBeLessThanOrEqual(fan.width);
        }
      }
    }
  },
);
