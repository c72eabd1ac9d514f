import { describe, expect, test } from 'vitest';
import { statesAfter } from '../../../src/course/claim.ts';
import { evaluate, nextPlaces } from '../../../src/engine/circuit/plain.ts';
import { bitsOf, settingsOf } from '../../../src/engine/model/system.ts';
import { loadShelf } from '../../../src/files/site/course.ts';
import { makeLive } from '../../../src/ui/live/make.ts';
import { sayState } from '../../../src/ui/live/say.ts';
import { failed, playScript, readState, stateText } from '../../../src/ui/live/script.ts';

const shelf = loadShelf();
const three = shelf.layout('three-port');
const wires = three.right[0]?.wires ?? [];
const healthy = failed(three.system, []);
const never = () => true;

describe('The script of a live circuit', () => {
  test('Every state of a script is one that the course’s claims would come to, at rest', () => {
    for (const id of shelf.layoutIds) {
      const { system, right } = shelf.layout(id);
      const moves = system.spec.demands.flatMap(({ when }) => {
        const called = [when].flat()[0] ?? {};
        const supplies = system.supplies.flatMap(({ input }) => system.inputs[input] ?? []);
        return [
          { ...Object.fromEntries(supplies.map((one) => [one.id, one.settings[1]])), ...called },
          settingsOf(system, 0),
        ];
      });
      for (const { wires: wiring } of right) {
        const stops = playScript(
          failed(system, []),
          wiring,
          {},
          moves.map((set) => ({ set, says: '' })),
        );
        stops.slice(1).forEach(({ config }, k) => {
          expect(nextPlaces(system, evaluate(system, wiring, config), config.place)).toEqual([]);
          const all = statesAfter(system, wiring, moves.slice(0, k + 1)).map(stateText);
          expect(all).toContain(stateText(config));
        });
      }
    }
  });

  // Source: facts of the mid-position valve, published at energycontrols2.fsnet.co.uk: after heating alone, with the
  // room satisfied and hot water off, the valve stays at port A on grey.
  test('It remembers where it came from: after heating the three-port stays wound over', () => {
    const stops = playScript(healthy, wires, { supply: 'on', heating: 'on', room: 'calling' }, [
      { set: {}, says: 'Called.' },
      { set: { room: 'satisfied' }, says: 'Warm.' },
    ]);
    expect(stops.map(({ config }) => config.place)).toEqual([2, 2]);
    expect(playScript(healthy, wires, { supply: 'on', heating: 'on' }, [])[0]?.config.place).toBe(0);
  });

  test('A first step that changes nothing is itself the beginning; otherwise the beginning has no words', () => {
    const start = { supply: 'on' };
    expect(playScript(healthy, wires, start, [{ set: {}, says: 'Look.' }])).toHaveLength(1);
    const two = playScript(healthy, wires, start, [{ set: { heating: 'on' }, says: 'On.' }]);
    expect(two.map(({ says }) => says)).toEqual(['', 'On.']);
  });

  test('A stuck valve is stuck from the beginning', () => {
    const part = three.system.parts.findIndex(({ id }) => id === 'three-port');
    const spec = three.system.parts[part]?.kind.failures?.find(({ id }) => id === 'stuck at A');
    if (!spec) throw new Error('the three-port has no such failure');
    const stops = playScript(failed(three.system, [{ part, spec }]), wires, { supply: 'on' }, []);
    expect(stops[0]?.config.place).toBe(2);
  });

  test('An address of a state is read back as that state, and nonsense is not', () => {
    const { system } = three;
    for (let inputs = 0; inputs < 2 ** system.inputs.length; inputs++)
      for (let place = 0; place < system.places; place++)
        expect(readState(system, stateText({ inputs, place }), 0)).toEqual({ inputs, place });
    expect(readState(system, '5', 2)).toEqual({ inputs: 5, place: 2 });
    for (const bad of ['', '99', '1.9', '-1', '1.1.1', 'x', '3e1'])
      expect(readState(system, bad, 0), bad).toBeUndefined();
  });

  test('The words of a state name what is live on the strip, what works and where the valve stands', () => {
    const inputs = bitsOf(three.system, { supply: 'on', 'hot-water': 'on', cylinder: 'calling' });
    expect(sayState(three.system, wires, { inputs, place: 0 })).toBe(
      'Live on the strip: 1, 4 and 6. The pump runs and the boiler fires. The three-port valve is at rest (open to the cylinder).',
    );
    expect(sayState(three.system, wires, { inputs, place: 2 })).toMatch(/spring/);
  });
});

describe('What an author of a live circuit gets wrong stops the build', () => {
  const slips: readonly [string, Parameters<typeof makeLive>[1], RegExp][] = [
    ['a layout', { layout: 'four-port' }, /four-port.*three-port/s],
    ['a wiring', { layout: 'three-port', wiring: 'upside-down' }, /call-on-the-switched-line.*upside-down/s],
    ['a switch', { layout: 'three-port', set: { sauna: 'on' } }, /supply.*sauna/s],
    ['a setting', { layout: 'three-port', steps: [{ set: { room: 'hot' }, says: '' }] }, /calling.*hot/s],
    ['a failure', { layout: 'three-port', fail: ['pump/sulks'] }, /pump\/dead.*pump\/sulks/s],
    ['a view', { layout: 'three-port', view: 'map' as 'strip' }, /strip, schematic and pipes.*map/s],
  ];
  test.each(slips)('%s that is not there is named, with what is', (_, props, says) => {
    expect(() => makeLive(shelf, props, never)).toThrow(says);
    expect(() => makeLive(shelf, props, never)).toThrow(/^<Live layout=/);
  });

  test('The same circuit has the same address every time, and another one another', () => {
    const id = (heating: string) =>
      makeLive(shelf, { layout: 'three-port', set: { heating } }, never).shown.id;
    expect(id('on')).toBe(id('on'));
    expect(id('on')).not.toBe(id('off'));
  });
});
