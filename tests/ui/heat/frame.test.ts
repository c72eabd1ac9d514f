import { expect, test } from 'vitest';
import { runDay } from '../../../src/engine/faults/day/run.ts';
import { ORDINARY_DAY } from '../../../src/engine/faults/day/settings.ts';
import { allFailures, failureId } from '../../../src/engine/faults/failure.ts';
import { frame, gather, spread, stretches } from '../../../src/ui/heat/frame.ts';
import { DRAWS, dayOf, FIRST_CHOICE } from '../../../src/ui/heat/presets.ts';
import { clock, signOf, storyOf, summary } from '../../../src/ui/heat/words.ts';
import { right, system } from '../../engine/support/flagship.ts';

const failures = allFailures(system, right).filter(
  (one) => failureId(system, one) === 'cyl-stat: welded calling',
);
const sound = { name: 'Your wiring', run: runDay(system, right) };
const failed = { name: 'Another', run: runDay(system, right, ORDINARY_DAY, failures) };

test('the time of day', () => {
  expect([0, 31_620, 86_400, 86_399].map(clock)).toEqual(['00:00', '08:47', '00:00', '23:59']);
});

test('a run is summed up in words, with the cut-out’s part in it', () => {
  expect(summary(sound)).toMatch(
    /^Your wiring: the store is between \d\d and 60 °C\. The cut-out has nothing to do\.$/,
  );
  expect(summary(failed)).toMatch(
    /^Another: .* 80 °C\. The store reaches the cut-out’s trip point at \d\d:\d\d\. The heat stops\.$/,
  );
});

test('a store that has nothing to stop its heat is not said to be safe', () => {
  const both = allFailures(system, right).filter((one) =>
    ['cyl-stat: welded calling', 'cut-out: failed closed'].includes(failureId(system, one)),
  );
  expect(summary({ name: 'Yours', run: runDay(system, right, ORDINARY_DAY, both) })).toContain(
    'The heat does not stop.',
  );
});

test('events of the first run have numbers and those of the second have letters', () => {
  expect([signOf(0, 0), signOf(0, 11), signOf(1, 0), signOf(1, 25)]).toEqual(['1', '12', 'a', 'z']);
});

test('signs that would touch share one', () => {
  const marks = [10, 18, 60, 200].map((x, k) => ({ x, sign: `${k + 1}` }));
  expect(gather(marks, 20)).toEqual([
    { x: 10, sign: '1–2' },
    { x: 60, sign: '3' },
    { x: 200, sign: '4' },
  ]);
});

test('labels keep apart and inside, in the order of the lines they name', () => {
  const heights = spread([100, 101, 40, 199], 14, 10, 200);
  const sorted = [...heights].sort((a, b) => a - b);
  for (const [k, y] of sorted.entries())
    if (k > 0) expect(y - (sorted[k - 1] ?? 0)).toBeGreaterThanOrEqual(14);
  expect(Math.max(...heights)).toBeLessThanOrEqual(200);
  expect((heights[0] ?? 0) < (heights[1] ?? 0)).toBe(true);
  expect(heights[2]).toBe(40);
});

test('stretches of the samples: from the first that holds to the first that does not', () => {
  const on = [false, true, true, false, true].map((holds, k) => ({ seconds: k * 60, holds }));
  expect(stretches(on, ({ holds }) => holds)).toEqual([[60, 180]]);
});

test.each([280, 328, 700, 1100])(
  'at %d px wide every line, sign, bar and label is inside the chart',
  (width) => {
    const runs = [sound, failed];
    const chart = frame(runs, ORDINARY_DAY, width);
    expect(chart.lines.length).toBe(4);
    for (const { d } of chart.lines) {
      const points = [...d.matchAll(/[ML]([\d.-]+),([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
      expect(points.length).toBeGreaterThan(width);
      for (const [x = -1, y = -1] of points) {
        expect(x >= chart.left && x <= chart.right && y >= chart.top && y <= chart.bottom).toBe(true);
      }
    }
    for (const { y, marks } of chart.marks) {
      expect(y > 9 && y < chart.top - 9).toBe(true);
      for (const { x } of marks) expect(x >= chart.left && x <= chart.right).toBe(true);
    }
    for (const { y, bars } of chart.lanes) {
      expect(y > chart.bottom && y + 20 < chart.height).toBe(true);
      for (const bar of bars) expect(bar.x >= chart.left && bar.x + bar.width <= chart.right + 1).toBe(true);
    }
    for (const { y } of chart.levels) expect(y > chart.top && y < chart.bottom).toBe(true);
    // Twelve px words: the widest label to the right of the lines, "B events", takes about 50 px.
    expect(width - chart.right).toBeGreaterThanOrEqual(55);
  },
);

test('each event of the story has a place among the signs', () => {
  const { marks } = frame([sound, failed], ORDINARY_DAY, 1100);
  const last = marks.map((row) => row.marks.at(-1)?.sign.split('–').at(-1));
  expect(last).toEqual([signOf(0, storyOf(sound.run).length - 1), signOf(1, storyOf(failed.run).length - 1)]);
});

test('what a learner chooses becomes the day, and every pattern of use holds as many litres as it says', () => {
  const summer = dayOf({ ...FIRST_CHOICE, heating: 'summer', thermostat: 65, litres: 150 });
  expect({ heating: summer.heating, thermostat: summer.thermostat, litres: summer.litres }).toEqual({
    heating: [],
    thermostat: 65,
    litres: 150,
  });
  expect(dayOf(FIRST_CHOICE)).toEqual({ ...ORDINARY_DAY });
  for (const { title, draws } of DRAWS) {
    const litres = draws.reduce((sum, draw) => sum + draw.litres, 0);
    expect(title).toContain(litres === 0 ? 'None' : `${litres} litres`);
  }
});
