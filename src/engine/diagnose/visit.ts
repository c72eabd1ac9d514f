import { type InputBits, partNamed, type Settings } from '../model/system.ts';
import { type Wire, wireKey } from '../model/wiring.ts';
import { list } from '../rules/words.ts';
import type { Breach } from './breach.ts';
import { costs } from './costs.ts';
import type { Test } from './evidence.ts';
import { needsDead } from './instrument.ts';
import { type DeadPair, energised, everyPair, NOT_PROVED, type Setup, suppliesLeft } from './setup.ts';
import { coversOn } from './tests.ts';

/** What an action leads to. Nothing is forbidden: what is unsafe is done, and told. */
export interface Done {
  readonly next: Setup;
  /** In the unit of `costs`. */
  readonly cost: number;
  readonly breaches: readonly Breach[];
  /** A new fuse went in. */
  readonly newFuse?: true;
}

const done = (next: Setup, cost: number, breaches: readonly Breach[] = []): Done => ({
  next,
  cost,
  breaches,
});

const withSettings = ({ system, inputs }: Setup, settings: Settings): InputBits =>
  system.inputs.reduce((bits, { id, settings: [rest, active] }, k) => {
    const wanted = settings[id];
    if (wanted === undefined) return bits;
    if (wanted !== rest && wanted !== active) throw new Error(`input "${id}" has no setting "${wanted}"`);
    return wanted === active ? bits | (1 << k) : bits & ~(1 << k);
  }, inputs);

/**
 * Sets some inputs; the others stay as they are. Switching a supply on ends the isolation. Throws an Error for a
 * setting that an input does not have.
 */
export function operate(setup: Setup, settings: Settings): Done {
  const next: Setup = { ...setup, inputs: withSettings(setup, settings) };
  if (!energised(next) || energised(setup)) return done(next, costs.operate);
  const early = setup.open.size > 0 && !setup.everProved;
  // What was traced stays known.
  const proof = { ...NOT_PROVED, identified: setup.proof.identified };
  return done({ ...next, proof }, costs.operate, early ? ['live-before-dead'] : []);
}

/** Traces a supply: where does it come from, and where is it switched off? Throws an Error for a part that is none. */
export function identify(setup: Setup, supply: string): Done {
  const { system, proof } = setup;
  if (!partNamed(system, supply).kind.supply) throw new Error(`"${supply}" is no supply`);
  const identified = new Set([...proof.identified, supply]);
  return done({ ...setup, proof: { ...proof, identified } }, costs.identify);
}

/** Switches off every supply that was traced, and no other. */
export function isolate(setup: Setup): Done {
  const { system, proof } = setup;
  const off = system.supplies.reduce((bits, { part, input }) => {
    const known = proof.identified.has(system.parts[part]!.id);
    return input < 0 || !known ? bits : bits & ~(1 << input);
  }, setup.inputs);
  return done({ ...setup, inputs: off }, costs.isolate);
}

/** Locks the supply off. Locking what is on does nothing. */
export const lockOff = (setup: Setup): Done =>
  done(energised(setup) ? setup : { ...setup, proof: { ...setup.proof, locked: true } }, costs.lockOff);

/** Proves the tester on a known source: the first time before the dead test, and again after all pairs. */
export function proveTester(setup: Setup): Done {
  const { proof } = setup;
  const again = proof.tester && everyPair(proof);
  const next = { ...setup, proof: { ...proof, tester: true, testerAgain: again } };
  return done({ ...next, everProved: setup.everProved || again }, costs.proveTester);
}

/**
 * Tests a pair for dead with the two-pole tester at the supply's terminals; `read` says what it shows. With a tester that
 * was not proved, or with the supply on, it proves nothing.
 */
export function testDead(setup: Setup, pair: DeadPair): Done {
  const { proof } = setup;
  if (!proof.tester) return done(setup, costs.deadTest, ['tester-not-proved']);
  const next = { ...setup, proof: { ...proof, dead: new Set([...proof.dead, pair]) } };
  return done(energised(setup) ? setup : next, costs.deadTest);
}

/** Takes the cover off a part. */
export function takeCover(setup: Setup, part: string): Done {
  partNamed(setup.system, part);
  const unknown = suppliesLeft(setup).length > 0;
  const breaches: Breach[] = energised(setup) ? ['cover-off-live'] : unknown ? ['not-identified'] : [];
  return done({ ...setup, open: new Set([...setup.open, part]) }, costs.cover, breaches);
}

/** Puts the cover back on. */
export function replaceCover(setup: Setup, part: string): Done {
  const open = new Set([...setup.open].filter((one) => one !== part));
  return done({ ...setup, open }, costs.cover);
}

/** What is wrong with putting a hand in now. */
function handIn(setup: Setup): Breach[] {
  if (energised(setup)) return ['hand-in-live'];
  if (suppliesLeft(setup).length > 0) return ['not-identified'];
  const { proof } = setup;
  if (!proof.locked) return ['not-locked'];
  if (!proof.tester) return ['tester-not-proved'];
  if (!everyPair(proof)) return ['pairs-left-out'];
  return proof.testerAgain ? [] : ['tester-not-proved-again'];
}

/** Looks and listens: nothing is opened, nothing touched. */
export const look = (setup: Setup): Done => done(setup, costs.look);

/**
 * Puts an instrument on a pair of terminals; `read` says what it shows. Throws an Error while a cover is in the way, or
 * for a terminal that is not there.
 */
export function measureWith(setup: Setup, test: Test & { readonly kind: 'reads' }): Done {
  const covered = coversOn(setup, test).map((part) => partNamed(setup.system, part).name.toLowerCase());
  if (covered.length > 0) throw new Error(`take the cover off first: ${list(covered)}`);
  const live = energised(setup);
  const breaches: Breach[] = live && needsDead(test.instrument) ? ['continuity-live'] : [];
  return done(setup, live ? costs.liveTest : costs.deadTest, breaches);
}

/** Lifts a wire, as drawn, out of its terminals. Throws an Error when the drawing has no such wire. */
export function lift(setup: Setup, wire: Wire): Done {
  if (!setup.wires.some((one) => wireKey(one) === wireKey(wire))) {
    throw new Error(`no wire "${wireKey(wire)}"`);
  }
  return done({ ...setup, lifted: [...setup.lifted, wire] }, costs.hand, handIn(setup));
}

/** Lands a lifted wire again where the drawing has it. */
export function land(setup: Setup, wire: Wire): Done {
  const lifted = setup.lifted.filter((one) => wireKey(one) !== wireKey(wire));
  return done({ ...setup, lifted }, costs.hand, handIn(setup));
}

/** Joins two terminals for a test. Throws an Error for a terminal that is not there. */
export function bridge(setup: Setup, a: string, b: string): Done {
  for (const end of [a, b]) {
    const node = setup.system.nodeOf.get(end);
    if (node === undefined || node >= setup.system.terminals) throw new Error(`no terminal "${end}"`);
  }
  return done({ ...setup, bridges: [...setup.bridges, [a, b]] }, costs.hand, handIn(setup));
}

/** Takes a bridge out. */
export function unbridge(setup: Setup, a: string, b: string): Done {
  const bridges = setup.bridges.filter((one) => wireKey(one) !== wireKey([a, b]));
  return done({ ...setup, bridges }, costs.hand, handIn(setup));
}

/** Resets every cut-out that has tripped: a button outside. Find out why it tripped first. */
export function resetCutOut(setup: Setup): Done {
  const settings = setup.system.parts.flatMap(({ kind, slots }) =>
    (kind.inputs ?? [])
      .filter(({ settings: [, active] }) => active === 'tripped')
      .map(({ slot, settings: [healthy] }) => [setup.system.inputs[slots[slot]!]!.id, healthy]),
  );
  return done({ ...setup, inputs: withSettings(setup, Object.fromEntries(settings)) }, costs.reset);
}

/**
 * Latches or frees a valve's manual lever: latched, the spring cannot shut it further than part open. Left out: that the
 * first stroke of the motor frees it (common practice).
 */
export function lever(setup: Setup, valve: string): Done {
  const { system, levers } = setup;
  if (system.movers[partNamed(system, valve).mover] === undefined) throw new Error(`"${valve}" has no lever`);
  const others = [...levers].filter((one) => one !== valve);
  return done({ ...setup, levers: new Set(levers.has(valve) ? others : [...levers, valve]) }, costs.lever);
}

/** Changes a part for a new one, which mends whatever had failed in it; in a supply that is a new fuse. */
export function swap(setup: Setup, part: string): Done {
  const { kind } = partNamed(setup.system, part);
  const next = { ...setup, renewed: new Set([...setup.renewed, part]) };
  const swapped = done(next, costs.swap, handIn(setup));
  return kind.supply ? { ...swapped, newFuse: true } : swapped;
}
