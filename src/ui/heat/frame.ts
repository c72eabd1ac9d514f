import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { isOn } from '../../engine/faults/day/schedule.ts';
import type { DaySettings } from '../../engine/faults/day/settings.ts';
import { type NamedRun, signOf, storyOf } from './words.ts';

/** Size of the words in the chart, px; the chart is drawn as wide as it is shown, so they stay that size. */
export const TEXT = 12;
const LEFT = 30;
const RIGHT = 58;
const TOP = 20;
const MARK_ROW = 22;
const LANE_ROW = 24;
/** Degrees between the lines of the scale. */
const DEGREES = 20;

export interface Mark {
  readonly x: number;
  readonly sign: string;
}
/** A row of bars under the chart: hours when something is on. */
export interface Lane {
  readonly title: string;
  readonly y: number;
  readonly bars: readonly { x: number; width: number }[];
}

/** Stretches of the samples for which something holds, as seconds. */
export function stretches<T extends { seconds: number }>(
  samples: readonly T[],
  holds: (sample: T) => boolean,
): [number, number][] {
  const found: [number, number][] = [];
  let from: number | undefined;
  for (const sample of samples) {
    if (holds(sample)) from ??= sample.seconds;
    else if (from !== undefined) {
      found.push([from, sample.seconds]);
      from = undefined;
    }
  }
  const end = samples.at(-1)?.seconds;
  if (from !== undefined && end !== undefined && end > from) found.push([from, end]);
  return found;
}

/** Marks that would touch share one: "2–4". */
export function gather(marks: readonly Mark[], apart: number): Mark[] {
  const groups: { x: number; signs: string[] }[] = [];
  for (const { x, sign } of marks) {
    const last = groups.at(-1);
    if (last && x - last.x < apart + (last.signs.length > 1 ? apart / 2 : 0)) last.signs.push(sign);
    else groups.push({ x, signs: [sign] });
  }
  return groups.map(({ x, signs }) => ({
    x,
    sign: signs.length === 1 ? `${signs[0]}` : `${signs[0]}–${signs.at(-1)}`,
  }));
}

/** Heights for labels that keep apart and inside, each as near its own as that allows. Same order as given. */
export function spread(wanted: readonly number[], apart: number, low: number, high: number): number[] {
  const order = wanted.map((y, k) => ({ y, k })).sort((a, b) => a.y - b.y);
  let least = low;
  for (const label of order) {
    label.y = Math.max(label.y, least);
    least = label.y + apart;
  }
  let most = high;
  for (const label of order.reverse()) {
    label.y = Math.min(label.y, most);
    most = label.y - apart;
  }
  const out = wanted.map(() => 0);
  for (const { y, k } of order) out[k] = y;
  return out;
}

/** Everything that the chart draws, in px, for one or two runs of the same hours. */
export function frame(runs: readonly NamedRun[], settings: DaySettings, width: number) {
  const end = settings.hours * 3600;
  const stories = runs.map(({ run }) => storyOf(run));
  const rows = stories.filter((story) => story.length > 0).length;
  const top = TOP + rows * MARK_ROW;
  const height = Math.min(320, Math.max(210, width * 0.5));
  const bottom = top + height;
  const right = width - RIGHT;
  const all = runs.flatMap(({ run }) => run.samples.flatMap(({ store, flow }) => [store, flow]));
  const lowest = Math.floor(Math.min(...all) / DEGREES) * DEGREES;
  const highest = Math.ceil(Math.max(100, ...all) / DEGREES) * DEGREES;
  const x = scaleLinear([0, end], [LEFT, right]);
  const y = scaleLinear([lowest, highest], [bottom, top]);
  const px = (value: number) => Math.round(value * 10) / 10;

  // About as many points as pixels: a minute is narrower than one.
  const thin = (samples: NamedRun['run']['samples']) => {
    const every = Math.max(1, Math.floor(samples.length / width / 1.5));
    return samples.filter((_, k) => k % every === 0 || k === samples.length - 1);
  };
  const path = (samples: NamedRun['run']['samples'], value: 'store' | 'flow') =>
    line<(typeof samples)[number]>()
      .x((sample) => x(sample.seconds))
      .y((sample) => y(sample[value]))
      .digits(1)(thin(samples)) ?? '';
  const lines = runs.flatMap(({ run: { samples } }, run) =>
    (['flow', 'store'] as const).map((what) => ({
      run,
      what,
      d: path(samples, what),
      end: y(samples.at(-1)?.[what] ?? 0),
    })),
  );
  const labelled = spread(
    lines.map((one) => one.end),
    TEXT + 2,
    top + TEXT / 2,
    bottom - TEXT / 2,
  );

  let row = 0;
  const marks = stories.map((story, run) => ({
    y: TOP + (story.length > 0 ? row++ : row) * MARK_ROW + MARK_ROW / 2 - 10,
    marks: gather(
      story.map(({ seconds }, k) => ({ x: px(x(seconds)), sign: signOf(run, k) })),
      20,
    ),
  }));

  const bars = (spans: readonly (readonly [number, number])[]) =>
    spans.map(([from, to]) => ({ x: px(x(from)), width: Math.max(0.8, px(x(to) - x(from))) }));
  const minutes = Array.from({ length: end / 60 + 1 }, (_, minute) => ({ seconds: minute * 60 }));
  const clocked = (spans: DaySettings['heating']) =>
    stretches(minutes, ({ seconds }) => isOn(spans, seconds));
  const named = (title: string, k: number) => (runs.length > 1 ? `${title}, ${'AB'.charAt(k)}` : title);
  const lanes: Lane[] = [
    { title: 'Hot water switched on', bars: bars(clocked(settings.hotWater)) },
    {
      title: 'Heating on and room calling',
      bars: bars(clocked(overlap(settings.heating, settings.roomCalls))),
    },
    ...runs.map(({ run }, k) => ({
      title: named('Boiler alight', k),
      bars: bars(stretches(run.samples, ({ boiler }) => boiler)),
    })),
  ].map((lane, k) => ({ ...lane, y: bottom + 26 + k * LANE_ROW }));

  const every = width < 520 ? 6 : 3;
  const hours = Array.from({ length: Math.floor(settings.hours / every) + 1 }, (_, k) => k * every);
  return {
    left: LEFT,
    right,
    top,
    bottom,
    height: bottom + 26 + lanes.length * LANE_ROW,
    lines: lines.map((one, k) => ({ ...one, labelY: px(labelled[k] ?? 0) })),
    marks,
    lanes,
    hours: hours.map((hour) => ({ x: px(x(hour * 3600)), hour: hour % 24 })),
    degrees: y.ticks((highest - lowest) / DEGREES).map((value) => ({ y: px(y(value)), value })),
    levels: [
      { says: 'thermostat', value: settings.thermostat, kind: 'stat' },
      { says: 'cut-out', value: settings.cutOut, kind: 'cut-out' },
      { says: 'relief valve', value: settings.reliefOpens, kind: 'relief' },
    ].map((level) => ({ ...level, y: px(y(level.value)) })),
  };
}

/** Where two lists of daily stretches are both on. */
function overlap(a: DaySettings['heating'], b: DaySettings['heating']): [number, number][] {
  return a.flatMap(([from, to]) =>
    b
      .map(([other, until]): [number, number] => [Math.max(from, other), Math.min(to, until)])
      .filter(([start, finish]) => finish > start),
  );
}
