import { describe, expect, it } from 'vitest';
import { wiresOf } from '../../../src/course/claim.ts';
import { demandOf, playStage } from '../../../src/course/stage.ts';
import { atWork, evaluate } from '../../../src/engine/circuit/plain.ts';
import { type Part, positionOf } from '../../../src/engine/model/system.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { type Slide, slidesOf, walkScript } from '../../../src/ui/stage/slides.ts';

const { layout, layoutIds } = loadShelf();
const three = layout('three-port');
const { system } = three;
const wires = wiresOf(three);
const valve = system.parts.find(({ id }) => id === 'three-port') as Part;
const view = ['strip'] as const;
const ON = { supply: 'on', 'hot-water': 'on' };

describe('the states of a script', () => {
  const rests = (steps: { set: Record<string, string> }[]) =>
    playStage(system, wires, { view, steps: steps.map((step) => ({ says: 'x', ...step })) }).map(
      ({ config }) => positionOf(system, valve, config.place),
    );

  it('go on from where the valves came to rest: the same switches leave a mid-position valve in two places', () => {
    const both = { ...ON, heating: 'on', room: 'calling', cylinder: 'calling' };
    const hot = { ...ON, heating: 'on', room: 'calling', cylinder: 'satisfied' };
    const neither = { ...ON, heating: 'on', room: 'satisfied', cylinder: 'calling' };
    // Common practice: with white dead and grey live the motor holds what it has reached; from rest nothing moves.
    expect(rests([{ set: both }, { set: hot }, { set: neither }])).toEqual(['mid', 'A', 'B']);
    const warm = { ...ON, heating: 'on', room: 'satisfied', cylinder: 'satisfied' };
    expect(rests([{ set: both }, { set: hot }, { set: warm }]).at(-1)).toBe('A');
    expect(rests([{ set: warm }]).at(-1)).toBe('B');
  });

  it('strike a failure where the valves stand, and mend it again', () => {
    const states = playStage(system, wires, {
      view,
      steps: [
        { says: 'x', set: { ...ON, cylinder: 'calling' } },
        { says: 'x', fail: ['three-port/stuck at A'] },
        { says: 'x', fail: [] },
      ],
    });
    expect(states.map(({ config }) => positionOf(system, valve, config.place))).toEqual(['B', 'A', 'B']);
    expect(states.map(({ failures }) => failures.length)).toEqual([0, 1, 0]);
  });

  it('keep the drawings of the last step that named some', () => {
    const slides = slidesOf(system, wires, {
      view,
      steps: [{ says: 'a' }, { says: 'b', view: ['pipework'] }, { says: 'c' }],
    });
    expect(slides.map(({ views }) => views)).toEqual([['strip'], ['pipework'], ['pipework']]);
  });

  it('say what has failed in words', () => {
    const [slide] = slidesOf(system, wires, {
      view,
      steps: [{ says: 'a', fail: ['three-port/stuck at A'] }],
    });
    expect(slide?.failed).toMatch(/^The three-port valve .+\.$/);
  });
});

describe('a walk with no script', () => {
  it.each(layoutIds)('follows every call of %s to its end, with a caption on each slide', (id) => {
    const one = layout(id);
    for (const demand of one.system.spec.demands) {
      const slides = slidesOf(one.system, wiresOf(one), walkScript(one.system, demand, view));
      expect(slides.length).toBeGreaterThan(4);
      for (const { says } of slides) expect(says).toMatch(/[.?]$/);
      const { config, walk } = slides.at(-1) as Slide;
      expect(walk?.journey.arrives).toBe(true);
      expect(walk?.step).toBe((walk?.journey.steps.length ?? 0) - 1);
      const live = evaluate(one.system, wiresOf(one), config);
      const working = (['fires', 'heats', 'pumps'] as const).some((does) => atWork(one.system, live, does));
      expect(working).toBe(true);
    }
  });

  it('starts cold: nothing is live before the call', () => {
    const [cold, call] = slidesOf(system, wires, walkScript(system, demandOf(system, 'heating'), view)) as [
      Slide,
      Slide,
    ];
    const { line } = evaluate(system, wires, cold.config);
    expect(line[system.nodeOf.get('programmer/L') ?? -1]).toBe(false);
    expect(call.says).toBe('Heating is called: supply on, heating on and room calling.');
  });
});
