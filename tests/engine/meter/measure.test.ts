import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../src/engine/circuit/plain.ts';
import { measure, type Readings, SUPPLY_VOLTS } from '../../../src/engine/meter/measure.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { configOf, reference, rewire, settings, system } from './system.ts';

const on = (
  asked: keyof typeof settings,
  threePort = 'B',
  twoPort = 'shut',
  wires: readonly Wire[] = reference,
) => measure(system, wires, configOf(settings[asked], { 'three-port': threePort, 'two-port': twoPort }));
/** Volts, or a number no test expects when they float. */
const read = ({ volts }: Readings, a: string, b: string): number => {
  const found = volts(a, b);
  return found === 'floating' ? Number.NaN : found.volts;
};

describe('volts', () => {
  test('line to neutral and line to earth read 230 V, neutral to earth nothing', () => {
    const meter = on('idle');
    expect(read(meter, 'boiler/L', 'boiler/N')).toBe(SUPPLY_VOLTS);
    expect(read(meter, 'boiler/L', 'pump/E')).toBe(SUPPLY_VOLTS);
    expect(read(meter, 'pump/N', 'pump/E')).toBe(0);
  });

  test('the two leads may be swapped', () => {
    const meter = on('both', 'mid', 'open');
    expect(read(meter, 'three-port/grey', 'three-port/white')).toBe(
      read(meter, 'three-port/white', 'three-port/grey'),
    );
  });

  test('with the supply off the dead strip floats against earth, and nothing on it differs', () => {
    const meter = on('off');
    expect(meter.volts('strip/1', 'strip/12')).toBe('floating');
    expect(meter.volts('spur/N', 'spur/E')).toBe('floating');
    expect(read(meter, 'strip/1', 'strip/11')).toBe(0);
    expect(read(meter, 'boiler/E', 'pump/E')).toBe(0);
  });

  test('a core that nothing is joined to floats', () => {
    expect(on('idle').volts('cyl-stat/COM', 'strip/12')).not.toBe('floating');
    expect(on('idle').volts('strip/10', 'strip/12')).toBe('floating');
    expect(on('idle').volts('programmer/CH-OFF', 'strip/10')).toBe('floating');
  });

  test('an earth terminal without its wire floats', () => {
    const meter = on('idle', 'B', 'shut', rewire(['pump/E']));
    expect(meter.volts('pump/E', 'strip/12')).toBe('floating');
    expect(meter.volts('boiler/L', 'pump/E')).toBe('floating');
  });

  test('an unknown terminal is an error', () => {
    expect(() => on('idle').volts('boiler/L', 'boiler/X')).toThrow('no terminal "boiler/X"');
  });

  test('a direct short opens the fuse and leaves the line dead', () => {
    const wires: Wire[] = [...reference, ['strip/1', 'strip/12']];
    const meter = on('idle', 'B', 'shut', wires);
    expect(meter.blown).toBe(true);
    expect(read(meter, 'strip/1', 'strip/11')).toBe(0);
    expect(on('idle').blown).toBe(false);
  });
});

describe('amps', () => {
  test('a driven valve takes 26 mA, both halves of the wave', () => {
    // 6 W at 230 V is 26 mA (published power; unity power factor assumed).
    const { rms, wave } = on('satisfied', 'mid').amps('three-port/motor');
    expect(rms).toBeCloseTo(0.026, 3);
    expect(wave).toBe('full');
  });

  test('a valve held at mid takes half a wave', () => {
    const { rms, halves, wave } = on('both', 'mid', 'open').amps('three-port/motor');
    expect(wave).toBe('half');
    // By hand: 230 V over the winding and, one way, 1,000 Ω beside 270,000 Ω; the other way 270,000 Ω alone.
    const [up, down] = [230 / (8817 + 1 / (1 / 1000 + 1 / 270_000)), 230 / (8817 + 270_000)];
    expect(halves[0]).toBeCloseTo(up, 9);
    expect(halves[1]).toBeCloseTo(-down, 9);
    expect(rms).toBeCloseTo(Math.sqrt((up ** 2 + down ** 2) / 2), 9);
  });

  test('a valve let go at A takes only what the 270 kΩ resistor leaks, about 0.8 mA', () => {
    const { rms, wave } = on('both', 'A', 'open').amps('three-port/motor');
    // 230 V over 270 kΩ alone would be 0.85 mA; the winding in series makes it 0.82 mA.
    expect(rms).toBeCloseTo(230 / 278_817, 6);
    expect(wave).toBe('none');
  });

  test('boiler, pump, programmer and a valve together take under 1 A of the 3 A fuse', () => {
    // 140 + 60 + 6 + 6 + 5 W = 217 W, 0.94 A (typical loads, common practice).
    const meter = on('satisfied', 'A');
    const parts = ['boiler/electronics', 'pump/motor', 'three-port/motor', 'programmer/clock'];
    const sum = parts.reduce((total, name) => total + meter.amps(name).rms, 0);
    expect(sum).toBeCloseTo((140 + 60 + 6 + 5) / 230, 2);
  });

  test('an unknown element is an error', () => {
    expect(() => on('idle').amps('pump/heater')).toThrow('no element "pump/heater"');
  });
});

describe('ohms', () => {
  test('a pump and the boiler demand side by side read less than either', () => {
    // 882 Ω beside 105.8 kΩ, by hand 874.7 Ω.
    expect(on('off').ohms('strip/8', 'strip/11')).toBeCloseTo(1 / (1 / 882 + 1 / 105_800), 6);
  });

  test('a closed contact reads nothing, an open one reads open', () => {
    const meter = on('off');
    expect(meter.ohms('cyl-stat/COM', 'cyl-stat/SAT')).toBe(0);
    expect(meter.ohms('two-port/grey', 'pump/E')).toBe(Number.POSITIVE_INFINITY);
    expect(measure(system, [], configOf({})).ohms('two-port/grey', 'two-port/orange')).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  test('a diode reads open both ways, so the valve at mid shows its 270 kΩ resistor', () => {
    const alone = measure(system, [], configOf({}, { 'three-port': 'mid' }));
    expect(alone.ohms('three-port/white', 'three-port/grey')).toBeCloseTo(270_000, 3);
    expect(alone.ohms('three-port/grey', 'three-port/white')).toBeCloseTo(270_000, 3);
  });

  test('the winding of a valve on the bench reads 8.8 kΩ', () => {
    expect(measure(system, [], configOf({})).ohms('three-port/white', 'three-port/blue')).toBeCloseTo(
      8817,
      6,
    );
  });

  test('ohms on a live system are refused', () => {
    expect(() => on('idle').ohms('boiler/L', 'boiler/N')).toThrow('supply off');
  });
});

test('in every state of the right wiring a load the engine calls working has the full supply across it, and no other has', () => {
  let working = 0;
  let idle = 0;
  for (let inputs = 0; inputs < 2 ** system.inputs.length; inputs++) {
    for (let place = 0; place < system.places; place++) {
      const config = { inputs, place };
      const { works } = evaluate(system, reference, config);
      const meter = measure(system, reference, config);
      for (const [k, { a, b, spec }] of system.loads.entries()) {
        if (spec.via !== undefined) continue;
        const volts = read(meter, system.nodes[a] ?? '', system.nodes[b] ?? '');
        if (works[k]) working++;
        else idle++;
        if (works[k]) expect(volts).toBeCloseTo(SUPPLY_VOLTS, 9);
        // The most an idle load gets: the accelerator at mid, fed back through the valve, 181 V.
        else expect(volts).toBeLessThan(0.8 * SUPPLY_VOLTS);
      }
    }
  }
  expect(working).toBeGreaterThan(500);
  expect(idle).toBeGreaterThan(500);
});
