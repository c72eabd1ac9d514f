import { describe, expect, it } from 'vitest';
import { type Claim, playClaim, statesAfter, UnknownName, wiresOf } from '../../src/course/claim.ts';
import { explorePlain } from '../../src/engine/explore/plain.ts';
import { loadShelf } from '../../src/files/site/course.ts';

const layout = loadShelf().layout('three-port');
const wires = wiresOf(layout);
const claim = (rest: Partial<Claim>): Claim => ({ says: '', layout: 'three-port', then: {}, ...rest });

/** Rows of the published three-port table: energycontrols2.fsnet.co.uk (3 port valves) and next.gr (mid-position valve). */
const heatingThenSatisfied = [{ supply: 'on', heating: 'on', room: 'calling' }, { room: 'satisfied' }];

describe('a claim about a circuit', () => {
  it('holds when the engine bears it out: after heating alone the valve stays at the radiators, boiler off', () => {
    expect(
      playClaim(
        layout,
        claim({ moves: heatingThenSatisfied, then: { at: { 'three-port': 'A' }, fires: false } }),
      ),
    ).toEqual([]);
  });

  it('fails when one part of it does not hold, and says what is so instead', () => {
    const wrong = playClaim(
      layout,
      claim({ moves: heatingThenSatisfied, then: { at: { 'three-port': 'B' }, fires: true, pumps: false } }),
    );
    expect(wrong).toEqual(['the boiler fires: false', 'three-port rests at A']);
  });

  it('is played with a wire lifted or a part failed', () => {
    const call = [{ supply: 'on', 'hot-water': 'on', cylinder: 'calling' }];
    expect(playClaim(layout, claim({ moves: call, then: { fires: true, heats: ['coil'] } }))).toEqual([]);
    const lift = wires.filter((wire) => wire.includes('cyl-stat/CALL'));
    expect(playClaim(layout, claim({ moves: call, lift, then: { fires: false } }))).toEqual([]);
    const hot = [{ supply: 'on', 'hot-water': 'on', cylinder: 'satisfied' }];
    expect(
      playClaim(layout, claim({ moves: hot, fail: ['cyl-stat/welded calling'], then: { fires: true } })),
    ).toEqual([]);
  });

  it('may be about the verdict: a classic mistake is rejected for the rule that it breaks', () => {
    const then = { rejected: true, breaks: ['runs-when-called'] };
    expect(playClaim(layout, claim({ wiring: 'orange-missing', then }))).toEqual([]);
    expect(playClaim(layout, claim({ then: { rejected: true } }))).toEqual(['the checker accepts it']);
  });

  it.each([
    [{ wiring: 'nonsense' }, /wiring/],
    [{ moves: [{ weather: 'fine' }] }, /switch/],
    [{ moves: [{ heating: 'perhaps' }] }, /setting/],
    [{ fail: ['boiler/melted'] }, /failure/],
    [{ then: { live: ['strip/99'] } }, /terminal/],
    [{ then: { at: { 'three-port': 'C' } } }, /position/],
  ] as [Partial<Claim>, RegExp][])(
    'with a name that the layout does not have is refused: %j',
    (rest, message) => {
      expect(() => playClaim(layout, claim(rest))).toThrow(UnknownName);
      expect(() => playClaim(layout, claim(rest))).toThrow(message);
    },
  );

  it('ends only in states that the exploration from cold reaches as well', () => {
    const { judged } = explorePlain(layout.system, wires);
    const moves = [
      { supply: 'on', heating: 'on', room: 'calling' },
      { 'hot-water': 'on', cylinder: 'calling' },
      { room: 'satisfied' },
    ];
    for (let length = 0; length <= moves.length; length++) {
      const states = statesAfter(layout.system, wires, moves.slice(0, length));
      expect(states.length).toBeGreaterThan(0);
      for (const { inputs, place } of states)
        expect(judged.has(inputs * layout.system.places + place)).toBe(true);
    }
  });
});
