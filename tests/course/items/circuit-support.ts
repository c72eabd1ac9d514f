import type { Item } from '../../../src/course/item.ts';
import type { Layout } from '../../../src/course/layout.ts';
import type { Maker } from '../../../src/course/task.ts';
import { configurations } from '../../../src/engine/grade/size.ts';
import { measure, type Readings } from '../../../src/engine/meter/measure.ts';
import type { Config, System } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { itemsOf, shelf } from './support.ts';

/** Layouts with few enough states to find all of them plainly, one move at a time. */
export const small = shelf.layoutIds.filter((id) => configurations(shelf.layout(id).system) <= 300);

/** The circuit that an item shows. */
export interface Shown {
  readonly item: Item;
  readonly layout: Layout;
  readonly system: System;
  readonly wires: readonly Wire[];
  readonly config: Config;
}

/** @throws Error when the item shows no circuit */
export function shownBy(item: Item): Shown {
  const { scene } = item;
  if (!scene) throw new Error(`${item.id} shows no circuit`);
  const layout = shelf.layout(scene.layout);
  return { item, layout, system: layout.system, wires: scene.wires, config: scene.config };
}

/** A meter on the circuit of an item: nodal solution, which knows nothing of what is joined to what. */
export const meterOn = ({ system, wires, config }: Shown): Readings => measure(system, wires, config);

/** Volts from a terminal to the neutral of the first supply; 0 where nothing ties it to anything. */
export function voltsAt(shown: Shown, meter: Readings, terminal: string): number {
  const reading = meter.volts(terminal, shown.system.nodes[shown.system.supply.neutral] ?? '');
  return reading === 'floating' ? 0 : reading.volts;
}

/** Items of each layout in turn, with their circuits. */
export const shownOn = (maker: Maker, layouts: readonly string[], seeds: number): Shown[] =>
  layouts.flatMap((layout) => itemsOf(maker, { layouts: [layout] }, seeds)).map(shownBy);

/** What of an item can be compared: all but the function that judges. */
export const dataOf = ({ judge: _, ...data }: Item): Omit<Item, 'judge'> => data;
