import type { DaySettings, DrawOff, Span } from './settings.ts';

const DAY = 86_400;

/** Hours as whole seconds: the clock and its changes then meet exactly. */
export const secondsIn = (hours: number): number => Math.round(hours * 3600);

/** Seconds of the day since an hour of it, from 0 up to a day. */
const since = (hour: number, seconds: number): number => (((seconds - secondsIn(hour)) % DAY) + DAY) % DAY;

/** Whether a daily stretch is on, so many seconds after the first midnight. The end is not part of it. */
export const isOn = (spans: readonly Span[], seconds: number): boolean =>
  spans.some(([from, to]) => since(from, seconds) < secondsIn(to) - secondsIn(from));

/** How long a draw-off lasts, hours. */
const drawHours = ({ litres }: DrawOff, litresPerMinute: number): number => litres / litresPerMinute / 60;

/** Water being drawn now, litre/s: taps open together add up. */
export const drawnAt = ({ draws, drawLitresPerMinute }: DaySettings, seconds: number): number =>
  (draws.filter((draw) => isOn([[draw.at, draw.at + drawHours(draw, drawLitresPerMinute)]], seconds)).length *
    drawLitresPerMinute) /
  60;

/** Litres of the draw-offs that begin at this second. */
export const drawsBeginning = ({ draws }: DaySettings, seconds: number): number =>
  draws.filter(({ at }) => since(at, seconds) === 0).reduce((sum, { litres }) => sum + litres, 0);

/** The seconds of a run at which something on the clock changes, each once, in order. The first is 0. */
export function secondsOfChange(settings: DaySettings): number[] {
  const { hotWater, heating, roomCalls, draws, drawLitresPerMinute, failAt, hours } = settings;
  const daily = [
    ...[...hotWater, ...heating, ...roomCalls].flat(),
    ...draws.flatMap((draw) => [draw.at, draw.at + drawHours(draw, drawLitresPerMinute)]),
  ].map((hour) => secondsIn(hour) % DAY);
  const end = secondsIn(hours);
  const changes = new Set([0, secondsIn(failAt)]);
  for (let day = 0; day < end; day += DAY) {
    for (const second of daily) changes.add(day + second);
  }
  return [...changes].filter((second) => second < end).sort((a, b) => a - b);
}
