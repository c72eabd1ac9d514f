/** What the outside check itself rests on: the simulator's habits, the bleeds, and the motor's unknown winding. */
import { expect, test, vi } from 'vitest';
import { measure } from '../../src/engine/meter/measure.ts';
import { configOf, reference, rewire, settings, system } from '../engine/meter/system.ts';
import { ampsName, netlist, voltsName } from './netlist.ts';
import { rms, run } from './ngspice.ts';
import { index, see } from './state.ts';

const probe = ['.save v(b) i(v1)', '.tran 100u 40m 20m 100u'];

test('ngspice gives half of 100 V across one of two equal resistors', async () => {
  const { time, wave } = await run([
    `V1 a 0 sin(0 ${100 * Math.SQRT2} 50)`,
    'R1 a b 1k',
    'R2 b 0 1k',
    ...probe,
  ]);
  // A thousandth: the saved cycle starts and ends on the simulator's steps.
  expect(Math.abs(rms(time, wave('v(b)')) - 50)).toBeLessThan(0.05);
});

test('a run that fails is reported, and never passes for the run before it', async () => {
  // ngspice also prints its complaints, by whichever of these it likes.
  for (const way of ['log', 'warn', 'error'] as const) vi.spyOn(console, way).mockImplementation(() => {});
  await run(['V1 a 0 1', 'R1 a b 1k', 'R2 b 0 1k', ...probe]);
  await expect(run(['V1 a 0 1', 'Q nonsense', ...probe])).rejects.toThrow('ngspice');
  await expect(run(['V1 a 0 1', 'R1 b c 1k', ...probe])).rejects.toThrow('singular matrix');
  vi.restoreAllMocks();
});

test('what the meter calls floating follows stray volts on the bleeds, and nothing else does', async () => {
  // 57 V: a quarter of the supply, as a core beside live ones picks up (20 to 110 V; common practice).
  const stray = 57;
  for (const wires of [reference, rewire(['spur/E', 'cyl-stat/COM', 'strip/4'])]) {
    for (const asked of ['off', 'idle', 'both'] as const) {
      const one = await see(system, wires, configOf(settings[asked], { 'three-port': 'mid' }), { stray });
      for (const [k, name] of system.nodes.slice(0, system.terminals).entries()) {
        const read = one.meter.volts(name, 'spur/N');
        const toEarth = one.meter.volts(name, 'spur/E');
        const volts = one.volts[k] ?? Number.NaN;
        if (toEarth === 'floating') expect(Math.abs(volts - stray), `${asked} ${name}`).toBeLessThan(0.5);
        else expect(Math.abs(volts - toEarth.volts), `${asked} ${name}`).toBeLessThan(0.5);
        // With the double-pole switch off even the strip's neutral floats.
        if (asked === 'off' && name.startsWith('boiler/L'))
          expect(read === 'floating' ? 1 : read.volts).toBe(0);
      }
    }
  }
});

test('ohms of the dead system agree with a current that ngspice drives through it, within 1 %', async () => {
  const config = configOf({ ...settings.both, supply: 'off' }, { 'three-port': 'A' });
  const meter = measure(system, reference, config);
  // A microamp keeps the test below a diode's forward voltage, as the meter assumes: the diode is left out.
  const amps = 1e-6;
  const lines = netlist(system, reference, config).filter((line) => !line.startsWith('D_'));
  const pairs = [
    ['spur/L', 'spur/N'],
    ['strip/8', 'strip/11'],
    ['two-port/brown', 'two-port/blue'],
    ['three-port/white', 'three-port/grey'],
    ['three-port/white', 'three-port/blue'],
    ['boiler/L', 'boiler/SL'],
    ['room-stat/CALL', 'room-stat/N'],
    ['programmer/L', 'strip/3'],
    ['cyl-stat/COM', 'strip/11'],
    ['strip/1', 'boiler/L'],
    ['pump/L', 'pump/E'],
    ['cyl-stat/SAT', 'cyl-stat/COM'],
  ] as const;
  for (const [a, b] of pairs) {
    const [from, to] = [index(system, a), index(system, b)];
    const { wave } = await run([`Iprobe n${to} n${from} ${amps}`, ...lines]);
    const theirs = ((wave(voltsName(from)).at(-1) ?? 0) - (wave(voltsName(to)).at(-1) ?? 0)) / amps;
    const ours = meter.ohms(a, b);
    // Open: nothing but the bleeds, 14 MΩ at least where 70 of them stand side by side.
    if (ours === Number.POSITIVE_INFINITY) expect(theirs, `${a} to ${b}`).toBeGreaterThan(10e6);
    else
      expect(Math.abs(theirs - ours), `${a} to ${b}: ${ours} and ${theirs}`).toBeLessThanOrEqual(
        0.5 + ours * 0.01,
      );
  }
});

test('drive, hold and release do not hang on the power factor assumed for the motor', async () => {
  // 0.5 is a low guess for a small shaded-pole or synchronous motor; impedance stays 8.8 kΩ. Nothing is published.
  const peak = (230 * Math.SQRT2) / 8817;
  const seen = async (asked: keyof typeof settings, at: string) => {
    const one = await see(system, reference, configOf(settings[asked], { 'three-port': at }), {
      powerFactor: 0.5,
    });
    const { rms: amps, least, most } = one.motor('three-port');
    return { share: amps / (230 / 8817), least: least / peak, most: most / peak };
  };
  const driven = await seen('satisfied', 'mid');
  expect(driven.share).toBeGreaterThan(0.9);
  expect(Math.min(driven.most, -driven.least)).toBeGreaterThan(0.9);
  const held = await seen('both', 'mid');
  expect(held.most).toBeGreaterThan(0.9);
  // Reverse current only through the 270 kΩ.
  expect(held.least).toBeGreaterThan(-0.1);
  const released = await seen('both', 'A');
  expect(released.share).toBeLessThan(0.1);
  // It leaks 0.85 mA (230 V through 270 kΩ and the winding), which frees the rotor's magnetism.
  expect(released.share).toBeGreaterThan(0.02);
});

test('the wave the helper measures is the motor current of the state asked for', async () => {
  const config = configOf(settings.both, { 'three-port': 'mid' });
  const { wave } = await run(netlist(system, reference, config));
  const amps = wave(ampsName('three-port/motor'));
  expect(Math.max(...amps)).toBeGreaterThan(0.9 * Math.SQRT2 * (230 / 9817));
  expect(Math.min(...amps)).toBeGreaterThan(-0.002);
});
