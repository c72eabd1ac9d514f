/**
 * The outside check: ngspice simulates the same wired system over a mains cycle, from a netlist written without the
 * engine's nets, evaluator or meter, and all three must tell the same story.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Config, partNamed, positionOf } from '../../src/engine/model/system.ts';
import { configOf, settings, system } from '../engine/meter/system.ts';
import { type Seen, see } from './state.ts';
import { type Named, randomFrom, wirings } from './wirings.ts';

/** Lowest voltage a supply may have: 230 V less 6 % (BS EN 50160 as the UK applies it: 216.2 to 253 V). */
const LIVE_VOLTS = 216;
/** A dead core reads under this (fault table of the course: "0" is below 5 V; common practice). */
const DEAD_VOLTS = 5;
/** The meter may differ from ngspice by 1 %, or by half a volt near zero. */
const METER_SHARE = 0.01;
const METER_VOLTS = 0.5;
/** The same for currents, with a tenth of a milliamp near zero: under 1 % of a valve motor's 26 mA. */
const METER_AMPS = 1e-4;
/** A valve motor takes 6 W at 230 V (published); unity power factor is assumed here, and varied further down. */
const RATED_AMPS = 6 / 230;
/** Driven: both halves of the wave, at least this share of rated current. */
const DRIVE = 0.9;
/** Let go: less than this share of rated current both ways. The 270 kΩ resistor leaks 3 %. */
const RELEASE = 0.1;
/** Held: one half of the wave reaches this share of the rated peak. Assumption: nobody publishes what a rotor needs. */
const HOLD = 0.3;

const rest = ['B', 'mid', 'A'];
/** Every position of the three-port under every demand, the two-port as the demand has it; and a few states at random. */
function statesFor(seed: number): Config[] {
  const usual = Object.entries(settings).flatMap(([name, asked]) =>
    rest.map((at) =>
      configOf(asked, { 'three-port': at, 'two-port': /water|both/.test(name) ? 'open' : 'shut' }),
    ),
  );
  const random = randomFrom(seed);
  const odd = Array.from({ length: 6 }, () => ({
    inputs: Math.floor(random() * 2 ** system.inputs.length) | 1,
    place: Math.floor(random() * system.places),
  }));
  return [...usual, ...odd];
}

interface Case extends Seen {
  readonly wiring: Named;
}
const cases: Case[] = [];
beforeAll(async () => {
  for (const [k, wiring] of wirings.entries()) {
    for (const config of statesFor(k)) cases.push({ ...(await see(system, wiring.wires, config)), wiring });
  }
}, 120_000);

const motors = ['three-port', 'two-port'];
const load = (part: string, id: string): number =>
  system.loads.findIndex(({ part: p, spec }) => system.parts[p]?.id === part && spec.id === id);
const asked = ({ live }: Seen, part: string): 'drive' | 'hold' | 'release' => {
  if (live.works[load(part, 'motor')]) return 'drive';
  return live.works[load(part, 'half wave')] ? 'hold' : 'release';
};
const simulated = ({ motor }: Seen, part: string, rated = RATED_AMPS): string => {
  const { rms, least, most } = motor(part);
  const peak = rated * Math.SQRT2;
  const swings = [most / peak, -least / peak];
  if (rms >= DRIVE * rated && Math.min(...swings) >= DRIVE) return 'drive';
  if (Math.max(...swings) >= HOLD && Math.min(...swings) < RELEASE) return 'hold';
  if (rms < RELEASE * rated) return 'release';
  return `neither: ${rms * 1000} mA, ${swings.join(' and ')} of rated peak`;
};
/** A motor with an end that only another load's path makes live: logic calls it dead, see the cases at the end. */
const fedThroughLoad = ({ throughLoad, live }: Seen, part: string): boolean => {
  const { a, b } = system.loads[load(part, 'motor')] ?? { a: -1, b: -1 };
  const hold = live.works[load(part, 'half wave')] ?? false;
  return !hold && ((throughLoad[a] ?? false) || (throughLoad[b] ?? false));
};

const sound = () => cases.filter(({ meter }) => !meter.blown);
const where = ({ wiring, title }: Case) => `${wiring.title} | ${title}`;
const close = (ours: number, theirs: number, least: number) =>
  Math.abs(ours - theirs) <= Math.max(least, METER_SHARE * theirs);
const terminals = system.nodes.slice(0, system.terminals);

describe('the engine against ngspice', () => {
  test('what the engine calls live reads at least 216 V to neutral', () => {
    const live = sound().flatMap((one) => one.volts.filter((_, k) => one.live.line[k]));
    expect(live.length).toBeGreaterThan(1000);
    expect(Math.min(...live)).toBeGreaterThanOrEqual(LIVE_VOLTS);
  });

  test('what the engine calls joined to neutral, or reached by nothing, reads dead', () => {
    // A core that is reached through a load alone is neither: it is left to the meter and to the cases at the end.
    const dead = sound().flatMap(({ volts, live, throughLoad }) =>
      volts.filter((_, k) => !live.line[k] && !throughLoad[k]),
    );
    expect(dead.length).toBeGreaterThan(1000);
    expect(Math.max(...dead)).toBeLessThanOrEqual(DEAD_VOLTS);
  });

  test('a valve is driven, held or let go in ngspice as the engine says', () => {
    const odd = new Set<string>();
    for (const one of sound()) {
      for (const part of motors) {
        const [says, is] = [asked(one, part), simulated(one, part)];
        if (says === is) continue;
        // The one known difference: blue on the pump's line, so that the motor runs through the pump.
        odd.add(fedThroughLoad(one, part) ? one.wiring.title : `${where(one)} | ${part}: ${says}, but ${is}`);
      }
    }
    expect([...odd]).toEqual(['orange and blue swapped on the three-port']);
  });

  test('the engine finds a short exactly where ngspice draws more than the 3 A fuse', () => {
    for (const one of cases) {
      const short = one.live.line[system.supply.neutral] || one.live.line[system.supply.earth];
      expect(one.drawn > 3 * Math.SQRT2, where(one)).toBe(short);
      expect(one.meter.blown, where(one)).toBe(short);
    }
    expect(cases.filter(({ meter }) => meter.blown).length).toBeGreaterThan(0);
  });

  test('the states cover right, wrong and broken wirings and every behaviour the valve can show', () => {
    for (const kind of ['right', 'wrong', 'broken']) {
      expect(sound().filter(({ wiring }) => wiring.kind === kind).length, kind).toBeGreaterThanOrEqual(20);
    }
    const seen = new Map<string, number>();
    for (const one of sound()) {
      const at = positionOf(system, partNamed(system, 'three-port'), one.config.place);
      const key = `${asked(one, 'three-port')} at ${at}`;
      if (!fedThroughLoad(one, 'three-port')) seen.set(key, (seen.get(key) ?? 0) + 1);
    }
    // The diode feeds the motor at mid alone: at B a contact spans it, at A switch 2 leaves it unfed.
    const kinds = [
      'drive at A',
      'drive at B',
      'drive at mid',
      'hold at mid',
      'release at A',
      'release at B',
      'release at mid',
    ];
    expect([...seen.keys()].sort()).toEqual(kinds);
    expect(Math.min(...seen.values())).toBeGreaterThanOrEqual(5);
  });
});

describe('the meter against ngspice', () => {
  test('volts from every terminal to earth agree within 1 %, and what floats reads nothing through the bleeds', () => {
    const odd: string[] = [];
    let tied = 0;
    for (const one of sound()) {
      for (const [k, name] of terminals.entries()) {
        const ours = one.meter.volts(name, 'spur/E');
        const theirs = one.volts[k] ?? Number.NaN;
        if (ours !== 'floating') tied++;
        if (!close(ours === 'floating' ? 0 : ours.volts, theirs, METER_VOLTS)) {
          odd.push(`${where(one)} | ${name}: ${ours === 'floating' ? ours : ours.volts} V, but ${theirs} V`);
        }
      }
    }
    expect(odd).toEqual([]);
    expect(tied).toBeGreaterThan(10 * cases.length);
  });

  test('volts between any two terminals agree within 1 % in every state', () => {
    const random = randomFrom(99);
    const any = () => Math.floor(random() * terminals.length);
    for (const one of sound()) {
      // At least ten pairs in each state; with the supply off few terminals are tied to each other.
      for (let pairs = 0; pairs < 12; ) {
        const [a, b] = [any(), any()];
        const ours = one.meter.volts(terminals[a] ?? '', terminals[b] ?? '');
        if (ours === 'floating') continue;
        pairs++;
        const theirs = one.between(a, b);
        expect(
          close(ours.volts, theirs, METER_VOLTS),
          `${where(one)} | ${terminals[a]} to ${terminals[b]}: ${ours.volts} V, but ${theirs} V`,
        ).toBe(true);
      }
    }
  });

  test('amps through both valve motors agree within 1 %', () => {
    for (const one of sound()) {
      for (const part of motors) {
        const [ours, theirs] = [one.meter.amps(`${part}/motor`).rms, one.motor(part).rms];
        expect(close(ours, theirs, METER_AMPS), `${where(one)} | ${part}: ${ours} A, but ${theirs} A`).toBe(
          true,
        );
      }
    }
  });
});
