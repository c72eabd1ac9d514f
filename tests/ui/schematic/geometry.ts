import { type Box, boxOf } from '../../../src/ui/schematic/measure.ts';
import type { Run, Schematic } from '../../../src/ui/schematic/schematic.ts';

/** A run as a box of no thickness. */
export const lineOf = ({ from, to }: Run): Box => ({
  left: Math.min(from[0], to[0]),
  right: Math.max(from[0], to[0]),
  top: Math.min(from[1], to[1]),
  bottom: Math.max(from[1], to[1]),
});

/** A box made larger on all sides. */
export const grown = ({ left, right, top, bottom }: Box, by: number): Box => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
});

/** Whether two boxes have an area, or a line and a box a stretch, in common. */
export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const isLevel = ({ from, to }: Run): boolean => from[1] === to[1];

/** Everything with letters in it, as boxes with what they say. */
export function lettersOf({ nets, symbols, notes }: Schematic): { says: string; box: Box }[] {
  const labels = [
    ...symbols.flatMap(({ name, ends }) => [name, ...ends.map(({ label }) => label)]),
    ...nets.flatMap((net) => net.labels),
    ...notes.flatMap((note) => note.labels),
  ];
  return [
    ...labels.map((label) => ({ says: label.text, box: boxOf(label) })),
    ...nets.flatMap(({ badge }) => (badge ? [{ says: badge.label.text, box: badge.box }] : [])),
  ];
}

/** Words that stand in one place. */
export function clashes(drawing: Schematic): string[] {
  const words = lettersOf(drawing);
  return words.flatMap((a, k) =>
    words
      .slice(k + 1)
      .filter((b) => overlap(a.box, b.box))
      .map((b) => `“${a.says}” over “${b.says}”`),
  );
}

/** Wires that run through a word or a symbol, and words that stand in a symbol. */
export function hits(drawing: Schematic): string[] {
  const words = lettersOf(drawing);
  const lines = drawing.nets.flatMap(({ runs, badge }) => runs.map((run) => ({ line: lineOf(run), badge })));
  // A conductor ends at the circle of its terminal, which is the edge of the symbol.
  const bodies = drawing.symbols.map(({ name, x, y }) => ({
    says: name.text,
    box: { left: x - 22, right: x + 22, top: y - 11, bottom: y + 10 },
  }));
  return [
    ...lines.flatMap(({ line, badge }) =>
      [...words, ...bodies]
        .filter(({ box }) => box !== badge?.box && overlap(line, box))
        .map(({ says }) => `a wire through “${says}”`),
    ),
    ...bodies.flatMap(({ says, box }) =>
      words.filter((word) => overlap(word.box, box)).map((word) => `“${word.says}” in ${says}`),
    ),
  ];
}

const runsOf = ({ nets }: Schematic) =>
  nets.flatMap(({ net, runs }) => runs.map((run) => ({ net, run, line: lineOf(run) })));

/** Wires of different nets that lie along each other or too near, less than 5 units apart. */
export function alongside(drawing: Schematic): string[] {
  const runs = runsOf(drawing);
  return runs.flatMap((a, k) =>
    runs
      .slice(k + 1)
      .filter((b) => a.net !== b.net && isLevel(a.run) === isLevel(b.run))
      .filter((b) => overlap(grown(a.line, 2.5), grown(b.line, 2.5)))
      .map((b) => `a wire of net ${a.net} along one of net ${b.net}`),
  );
}

/** Where a level wire and an upright of another net cross. */
export function crossingsOf(drawing: Schematic): { level: Run; x: number }[] {
  const runs = runsOf(drawing);
  return runs.flatMap((a) =>
    !isLevel(a.run)
      ? []
      : runs
          .filter(
            (b) => b.net !== a.net && !isLevel(b.run) && overlap(grown(a.line, 0.01), grown(b.line, 0.01)),
          )
          .map((b) => ({ level: a.run, x: b.line.left })),
  );
}
