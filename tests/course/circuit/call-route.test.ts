import { expect, test } from 'vitest';
import { callRoute } from '../../../src/course/circuit/call-route.ts';
import { shelf } from '../items/support.ts';
import { stepsFrom } from './support.ts';

const routes = shelf.layoutIds.flatMap((id) => {
  const layout = shelf.layout(id);
  return layout.right.flatMap(({ wires }) =>
    layout.system.spec.demands.flatMap((demand) =>
      [false, true].flatMap((valves) => callRoute(layout, wires, demand, valves) ?? []),
    ),
  );
});

test('the way of a call goes by wires and made contacts only, and no shorter one leads to its end', () => {
  expect(routes.length).toBeGreaterThan(60);
  for (const { route, standing } of routes) {
    const { system, wires, config, layout } = standing;
    const [start = -1] = route;
    const steps = stepsFrom(system, wires, config, start);
    // Each node of the way lies one ring further out: so each hop is a wire or a contact, and none is wasted.
    expect(
      route.map((node) => steps.get(node)),
      layout.id,
    ).toEqual(route.map((_, k) => k));
  }
});

test('it starts at the line of a supply and ends at a load that works', () => {
  for (const { route, standing } of routes) {
    const { system, live } = standing;
    expect(system.supplies.map(({ line }) => line)).toContain(route[0]);
    expect(system.loads.some(({ a, b }, l) => live.works[l] && [a, b].includes(route.at(-1) ?? -1))).toBe(
      true,
    );
  }
});

test('it says where it leads: to the boiler through the end switch, or to the motor of the valve', () => {
  const layout = shelf.layout('two-two-ports');
  const demand = layout.system.spec.demands.find(({ says }) => says === 'heating');
  const [first] = layout.right;
  if (!demand || !first) throw new Error('two two-ports have a call for heating');
  const boiler = callRoute(layout, first.wires, demand);
  expect(boiler).toMatchObject({ to: 'the boiler', fails: 'the boiler does not fire' });
  const motor = callRoute(layout, first.wires, demand, true);
  expect(motor?.to).toBe('the motor of the heating valve');
  const passes = motor?.route.map((node) => layout.system.nodes[node]);
  expect(passes).toContain('programmer/CH-ON');
  expect(passes?.at(-1)).toBe('heating-valve/brown');
});

test('a boiler asked through a volt-free pair has no way of live', () => {
  const layout = shelf.layout('combi-volt-free');
  for (const { wires } of layout.right)
    for (const demand of layout.system.spec.demands) expect(callRoute(layout, wires, demand)).toBeUndefined();
});
