import { mergeNets } from '../../../src/engine/circuit/nets.ts';
import type { Case } from './cases.ts';
import { grown, lineOf, overlap } from './geometry.ts';

/** Wired terminals that the drawing does not show, or shows joined to other things than the wires join. */
export function missing({ system, wires, drawing }: Case): string[] {
  const { of } = mergeNets(system, wires);
  return [...new Set(wires.flat())].filter((name) => {
    const node = system.nodeOf.get(name) ?? -1;
    const mark = name.slice(name.indexOf('/') + 1);
    const nets = drawing.nets.filter(({ nodes }) => nodes.includes(node));
    const notes = drawing.notes.filter(({ net }) => net === of[node]);
    const told = [
      ...nets.map(({ badge }) => ` ${badge?.label.text ?? ''} `),
      ...notes.map(({ labels }) => `${labels.map(({ text }) => text).join(' ')} `),
    ];
    const ends = drawing.symbols.flatMap((symbol) => symbol.ends.filter((end) => end.node === node));
    const shown =
      ends.some(({ label }) => label.text === mark) ||
      told.some((text) => new RegExp(` ${mark}[ ,.:]`).test(text));
    return !shown || nets.length > 1 || nets.length + notes.length === 0;
  });
}

/** Nets whose nodes the wires do not join, or that stand in the drawing twice. */
export function mixed({ system, wires, drawing }: Case): string[] {
  const { of } = mergeNets(system, wires);
  const seen = new Set<number>();
  return drawing.nets.flatMap(({ net, nodes }) => {
    const again = seen.has(net);
    seen.add(net);
    return again || nodes.some((node) => of[node] !== net) ? [`net ${net}`] : [];
  });
}

/** Nets whose conductors do not hang together, or do not come to each of their contacts and loads. */
export function severed({ drawing }: Case): string[] {
  return drawing.nets.flatMap(({ net, runs }) => {
    const ends = drawing.symbols.flatMap(({ from, to, x, y }) => [
      ...(from === net ? [{ left: x - 24, right: x - 24, top: y, bottom: y }] : []),
      ...(to === net && from !== net ? [{ left: x + 24, right: x + 24, top: y, bottom: y }] : []),
    ]);
    // The far end of a contact that is bridged from outside says in words where it is joined.
    const own = runs.filter(
      (run) =>
        !drawing.symbols.some((s) => s.from === s.to && run.from[0] === s.x + 24 && run.from[1] === s.y),
    );
    const pieces = [...own.map(lineOf), ...ends].map((box) => grown(box, 0.01));
    const reached = new Set([0]);
    for (const at of reached)
      for (const [k, piece] of pieces.entries()) {
        const here = pieces[at];
        if (here && overlap(here, piece)) reached.add(k);
      }
    return reached.size === pieces.length ? [] : [`net ${net}`];
  });
}
