import { type Place, positionOf, type System } from '../../engine/model/system.ts';
import { type Heat, isHeated, waterIn } from './heat.ts';
import type { Drawing, Placed } from './layout.ts';
import { SIZE, widthOf } from './text.ts';

export { SIZE } from './text.ts';

/** A word in the drawing. `y` is the baseline. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly tone: 'name' | 'state' | 'hot' | 'back' | 'port' | 'shut' | 'danger';
}

/** A valve's name where it fits over its column, else its short one. */
const shortName = ({ part }: Placed): string => {
  const name = part.name.replace(/ valve$/, '');
  return widthOf(name) > COLUMN ? part.short.replace(/ valve$/, '') : name;
};

/** What a heat source does when it is at work; one without work of its own is always hot. */
const saysOn = (does?: string): string => (does === 'pumps' ? 'runs' : does ? 'fires' : 'hot');

/** Room for the words over one part. */
const COLUMN = 62;

/** All words of the drawing in one state. `cutOut` is left out where the system has none to show. */
export function labelsFor(
  system: System,
  drawing: Drawing,
  heat: Heat,
  place: Place,
  cutOut?: 'healthy' | 'tripped',
): Label[] {
  const labels: Label[] = [];
  const put = (tone: Label['tone'], text: string, x: number, y: number, anchor: Label['anchor'] = 'middle') =>
    labels.push({ text, x, y, anchor, tone });

  for (const placed of drawing.parts) {
    const { part, figure, x, y, w, h } = placed;
    const top = y - h / 2;
    const bottom = y + h / 2;
    const position = positionOf(system, part, place);
    if (figure === 'boiler') {
      const on = heat.working.has(part.id);
      put('name', part.short, x, top + 18);
      put(on ? 'hot' : 'state', on ? saysOn(part.kind.work?.does) : 'off', x, bottom - 9);
    } else if (figure === 'pump') {
      const below = y < drawing.base;
      const runs = heat.working.has(part.id);
      put('name', part.short, x, below ? bottom + 14 : top - 20);
      put('state', runs ? 'runs' : 'still', x, below ? bottom + 28 : top - 6);
    } else if (figure === 'two-port') {
      const below = y < drawing.base;
      put('name', shortName(placed), x, below ? bottom + 16 : top - 20);
      put(position === 'shut' ? 'shut' : 'state', position, x, below ? bottom + 30 : top - 6);
    } else if (figure === 'three-port' && placed.faces) {
      const { left, up, down } = placed.faces;
      const passes = (part.kind.passes?.(position) ?? []).flat();
      put('name', shortName(placed), x + w / 2 + 5, y - 2, 'start');
      put('state', position === 'mid' ? 'at mid' : `at ${position}`, x + w / 2 + 5, y + 12, 'start');
      put('port', left, x - w / 2 - 3, y - 9, 'end');
      for (const [port, at] of [
        [up, top - 5],
        [down, bottom + 13],
      ] as const) {
        const open = passes.includes(port);
        put(open ? 'port' : 'shut', open ? port : `${port} shut`, x + 7, at, 'start');
      }
    } else if (figure === 'bypass') {
      put('name', part.short, x, top - 6);
    } else if (figure === 'radiators') {
      // A long name grows away from the return pipe on its right.
      const long = widthOf(part.short) > w + 10;
      put('name', part.short, long ? x + w / 2 + 5 : x, top - 6, long ? 'end' : 'middle');
      const heated = isHeated(part.id, heat);
      put(heated ? 'hot' : 'state', heated ? 'heated' : 'no heat', x, bottom + 15);
    } else {
      const heated = isHeated(part.id, heat);
      put('name', part.short, x, top + 20);
      put(heated ? 'hot' : 'state', heated ? 'heated' : 'no heat', x, top + 34);
      if (cutOut) put(cutOut === 'tripped' ? 'danger' : 'state', 'Cut-out', x - 4, top + 53);
      if (cutOut) put(cutOut === 'tripped' ? 'danger' : 'state', cutOut, x - 4, top + 66);
    }
  }

  const { trunk, base, takersFrom } = drawing;
  const water = waterIn({ side: 'flow', serves: [...heat.open] }, heat);
  put('name', 'Flow', 6, trunk - 24, 'start');
  put(water === 'hot' ? 'hot' : 'state', water, 6, trunk - 10, 'start');
  put(
    water === 'hot' ? 'back' : 'state',
    water === 'still' ? 'Return, still' : 'Return',
    takersFrom - 66,
    base - 9,
  );
  return labels;
}

/** The box a label needs, with its width judged from its letters. */
export function boxOf({ text, x, y, anchor }: Label): { x: number; y: number; w: number; h: number } {
  const w = widthOf(text);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - w : x - w / 2;
  return { x: left, y: y - SIZE * 0.78, w, h: SIZE };
}
