import { describe, expect, test } from 'vitest';
import { restsFrom } from '../../../src/course/rests.ts';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { benchFor, benchWires, PART, startOf } from '../../../src/ui/inside/bench.ts';
import { sayInside } from '../../../src/ui/inside/say.ts';

// "Published": analyses of the valve's circuit at energycontrols2.fsnet.co.uk ("3 port valves") and next.gr
// ("mid-position valve"); "derived": follows from the contacts they describe, printed by nobody. Simple tables at
// octaveblue.co.uk and ondotdot.pwp.blueyonder.co.uk have grey alone leave the valve at mid: the model follows the
// analyses, which wind it on to port A.
const places = ['B', 'mid', 'A'];
const rows: readonly [
  white: boolean,
  grey: boolean,
  from: string,
  to: string,
  orange: boolean,
  source: string,
][] = [
  [false, false, 'B', 'B', false, 'published'],
  [false, false, 'mid', 'B', false, 'published'],
  [false, false, 'A', 'B', false, 'published'],
  [true, false, 'B', 'mid', false, 'position published, orange derived'],
  [true, false, 'mid', 'mid', false, 'position published, orange derived'],
  [true, false, 'A', 'mid', false, 'position published, orange derived'],
  [true, true, 'B', 'A', true, 'published'],
  [true, true, 'mid', 'A', true, 'published'],
  [true, true, 'A', 'A', true, 'published'],
  [false, true, 'B', 'B', false, 'published'],
  [false, true, 'mid', 'A', false, 'published by the analyses; simple tables differ'],
  [false, true, 'A', 'A', false, 'published'],
];

const bench = benchFor('mid-position-valve');
const fedWith = (white: boolean, grey: boolean) =>
  benchWires(bench, new Set([...(white ? ['white'] : []), ...(grey ? ['grey'] : [])]));

describe('The mid-position valve with its cover off', () => {
  test.each(rows)(
    'white %s and grey %s from %s: it comes to rest at %s, orange live %s (%s)',
    (white, grey, from, to, orange) => {
      const wires = fedWith(white, grey);
      const { inputs } = startOf(bench);
      const place = places.indexOf(to);
      expect(restsFrom(bench.system, wires, inputs, [places.indexOf(from)])).toEqual([place]);
      const { line } = evaluate(bench.system, wires, { inputs, place });
      expect(line[bench.system.nodeOf.get(`${PART}/orange`) ?? -1]).toBe(orange);
    },
  );

  test('At mid on white alone the words name the half wave, where it comes from and that it holds', () => {
    const says = sayInside(bench, fedWith(true, false), { ...startOf(bench), place: 1 });
    expect(says.moves).toBe('Half a wave locks the motor: it holds at mid.');
    expect(says.feeds).toEqual([
      'Motor: nothing feeds it.',
      'Half wave: fed from white, through switch 2 at rest and the diode. Half of every wave gets through.',
    ]);
    expect(says.made).toEqual(['Switch 1 operated: grey to motor', 'Switch 2 at rest: white to diode']);
    expect(says.does).toBe('Open: AB to A and AB to B.');
  });

  test('With grey joining in, the motor takes the whole wave through switch 1 and winds on', () => {
    const says = sayInside(bench, fedWith(true, true), { ...startOf(bench), place: 1 });
    expect(says.moves).toBe('The motor winds it on, against the spring.');
    expect(says.feeds[0]).toBe('Motor: fed from grey, through switch 1 operated.');
    expect(says.feeds[1]).toMatch(/the diode adds nothing/);
  });

  // Source: the same analyses; switch 2 joins white and orange both ways.
  test('A live that arrives on orange at port A feeds back to white, and does not reach the motor', () => {
    const wires = benchWires(bench, new Set(['orange']));
    const { line } = evaluate(bench.system, wires, { ...startOf(bench), place: 2 });
    const isLive = (name: string) => line[bench.system.nodeOf.get(`${PART}/${name}`) ?? -1];
    expect([isLive('white'), isLive('(motor)')]).toEqual([true, false]);
    expect(sayInside(bench, wires, { ...startOf(bench), place: 2 }).moves).toBe(
      'Nothing holds it: the spring takes it back.',
    );
  });

  test('When the power fails, nothing is fed, and the spring takes it back from anywhere', () => {
    for (const place of [1, 2]) {
      const says = sayInside(bench, fedWith(true, true), { inputs: 0, place });
      expect(says.feeds).toEqual(['Motor: nothing feeds it.', 'Half wave: nothing feeds it.']);
      expect(says.moves).toBe('Nothing holds it: the spring takes it back.');
    }
  });
});
