import type { PartKind } from '../../engine/model/part.ts';

/** The pictures the pipework is drawn with. */
export type Figure = 'boiler' | 'pump' | 'three-port' | 'two-port' | 'cylinder' | 'radiators' | 'bypass';

/** Width and height of each figure's body in drawing units (about one pixel at 330 px wide). */
export const bodies: Readonly<Record<Figure, readonly [w: number, h: number]>> = {
  boiler: [52, 88],
  pump: [34, 34],
  'three-port': [34, 48],
  'two-port': [34, 26],
  cylinder: [66, 150],
  radiators: [66, 40],
  bypass: [66, 24],
};

/** The bonnet on top of a two-port, which the open gate lifts into. */
export const bonnet = { w: 17, h: 15 } as const;

/** Height of the pipes into and out of a figure that takes heat, down from the top of its body. */
export const connections = {
  cylinder: { in: 78, out: 129 },
  radiators: { in: 30, out: 30 },
  bypass: { in: 12, out: 12 },
} as const;

/** The picture for a kind of part, from what it does with water rather than from its name. */
export function figureOf(kind: PartKind): Figure {
  if (kind.heat === 'gives') return 'boiler';
  if (kind.heat === 'takes') return kind.kind.endsWith('coil') ? 'cylinder' : 'radiators';
  if (kind.heat === 'bypass') return 'bypass';
  if (!kind.motion || kind.work?.does === 'pumps') return 'pump';
  return (kind.ports?.length ?? 0) > 2 ? 'three-port' : 'two-port';
}

/**
 * Where the shoe of a three-port stands: -1 on the upper port, 0 between, 1 on the lower port. `position` may
 * lie between two of the valve's positions while it travels. The shoe stands on the port that is shut.
 */
export function shoeAt(kind: PartKind, upper: string, position: number): number {
  const seat = (index: number): number => {
    const passes = kind.passes?.(kind.motion?.positions[index] ?? '') ?? [];
    if (passes.length !== 1) return 0;
    return passes[0]?.includes(upper) ? 1 : -1;
  };
  return between(seat, position);
}

/** How far a two-port's gate is lifted: 0 shut, 1 open. */
export const gateAt = (kind: PartKind, position: number): number =>
  Math.min(1, Math.max(0, position / Math.max(1, (kind.motion?.positions.length ?? 1) - 1)));

/** Reads a value given at whole numbers at a place between two of them. */
function between(value: (index: number) => number, at: number): number {
  const low = Math.floor(at);
  return value(low) + (value(Math.ceil(at)) - value(low)) * (at - low);
}
