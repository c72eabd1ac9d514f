import { expect, test } from 'vitest';
import { ORDINARY_DAY } from '../../../../src/engine/faults/day/settings.ts';
import { mistake, right } from '../../support/flagship.ts';
import { day, first } from './days.ts';

// What the lesson "How hot does it get?" says, held against the run that its chart shows: the panel fails things at
// 05:00 in winter unless told, and its summer has no heating.
const welded = 'cyl-stat: welded calling';
const { cutOut, reliefOpens } = ORDINARY_DAY;

test('A thermostat welded at five in the morning: the store gets about as hot as the cut-out allows', () => {
  expect(ORDINARY_DAY.failAt).toBe(5);
  const run = day(right, [welded]);
  expect(first(run, 'cut-out')).toBeDefined();
  expect(run.hottest).toBeGreaterThanOrEqual(cutOut);
  expect(run.hottest).toBeLessThan(cutOut + 2);
});

test('With the cut-out bypassed the store stays near the top, held below the relief valve by the boiler alone', () => {
  const run = day(mistake('cut-out-bypassed').wires, [welded]);
  expect(run.hottest).toBeGreaterThan(cutOut);
  expect(run.hottest).toBeLessThan(reliefOpens);
  expect(first(run, 'relief')).toBeUndefined();
});

test('A two-port stuck open: in winter hotter than it should be and no trip, in summer a trip that does not help', () => {
  const stuck = 'two-port: stuck open';
  const winter = day(right, [stuck]);
  expect(winter.hottest).toBeGreaterThan(day(right).hottest + 5);
  expect(first(winter, 'cut-out')).toBeUndefined();
  const summer = day(right, [stuck], { heating: [] });
  expect(first(summer, 'cut-out')).toBeDefined();
  expect(first(summer, 'uncontrolled')).toBeDefined();
});
