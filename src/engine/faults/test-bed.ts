import { makeSweepRoom, type Sweep, type SweepRoom, sweep } from '../circuit/fast.ts';
import { type Frame, makeFrame, workOf } from '../circuit/frame.ts';
import { makeMoves, sweepMoves } from '../circuit/motion.ts';
import { mergeNets, type Nets } from '../circuit/nets.ts';
import { exploreLanes, makeReach } from '../explore/reach.ts';
import type { Config, Place, System } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { type HeatLanes, heatLanes, heatSources, sweepWork } from '../rules/lanes.ts';
import { failPlace, failSystem, failWires } from './apply.ts';
import type { Failure } from './failure.ts';
import type { Hazard, HazardView, Watch } from './hazard.ts';

/** Joints that failures may add to the contacts of a system at one time. */
const MOST_ADDED = 8;

/** A circuit with its failures, and what is live in it. */
interface Circuit {
  readonly nets: Nets;
  readonly live: Sweep;
}

/** Every place where the valves of a healthy system can come to rest: where failures may strike. */
export function restPlaces(system: System, wires: readonly Wire[]): Place[] {
  const frame = makeFrame(system);
  const nets = mergeNets(system, wires);
  const moves = sweepMoves(frame, nets, sweep(frame, nets, makeSweepRoom(frame)), makeMoves(frame));
  const { judged } = exploreLanes(frame, moves, makeReach(frame));
  return Array.from({ length: system.places }, (_, place) => place).filter((place) =>
    judged.subarray(place * frame.blocks, (place + 1) * frame.blocks).some((word) => word !== 0),
  );
}

/** Tries failures on one wired system against one hazard, as fast as a verdict: only what failed is worked out anew. */
export function makeTestBed(system: System, wires: readonly Wire[], hazard: Hazard, watch: Watch) {
  const frame = makeFrame(system, watch.fixed);
  const starts = restPlaces(system, wires);
  const roomy = {
    ...frame,
    system: { ...system, contacts: [...system.contacts, ...system.contacts.slice(0, MOST_ADDED)] },
  };
  const room = makeSweepRoom(roomy);
  const moves = makeMoves(frame);
  const reach = makeReach(frame);
  const sources = heatSources(frame);
  const gives = sources.map(() => new Int32Array(frame.words));
  const there = new Int32Array(frame.words);
  const patched = new Int32Array(frame.closed.length + MOST_ADDED * frame.words);
  const healthy = heatLanes(frame);
  const circuits = new Map<Failure | undefined, Circuit>();
  const leaky = new Map<string, HeatLanes>();

  function failFrame(failed: System): Frame {
    if (failed === system) return frame;
    let { closed } = frame;
    if (failed.contacts !== system.contacts) {
      closed = patched;
      closed.set(frame.closed);
      for (let c = 0; c < failed.contacts.length; c++) {
        const contact = failed.contacts[c]!;
        if (contact === system.contacts[c]) continue;
        // A failed contact stays as it is whatever the state.
        const stays = contact.spec.closed({ setting: {}, position: '' }) ? frame.used : 0;
        closed.fill(stays, c * frame.words, (c + 1) * frame.words);
      }
    }
    const sameWork = failed.loads === system.loads && failed.parts === system.parts;
    return { ...frame, system: failed, closed, work: sameWork ? frame.work : workOf(failed) };
  }

  /** Ways that leak change where heat can go; there are few such sets, so each is worked out once. */
  function heatIn(failed: Frame, failures: readonly Failure[]): HeatLanes {
    const leaks = failures.flatMap((f) => ('wire' in f || !f.spec.leaks ? [] : [`${f.part} ${f.spec.id}`]));
    if (leaks.length === 0) return healthy;
    const key = leaks.sort().join();
    let found = leaky.get(key);
    if (!found) {
      found = heatLanes(failed);
      leaky.set(key, found);
    }
    return found;
  }

  /** What is live depends on the circuit alone; with one failure in it, or none, that is asked for again and again. */
  function circuitOf(failed: Frame, failures: readonly Failure[]): Circuit {
    const inCircuit = failures.filter((failure) => 'wire' in failure || failure.spec.contacts);
    if (inCircuit.length > 1) return sweepCircuit(failed, inCircuit, room);
    const [only] = inCircuit;
    let found = circuits.get(only);
    if (!found) {
      found = sweepCircuit(failed, inCircuit, makeSweepRoom(roomy));
      circuits.set(only, found);
    }
    return found;
  }

  function sweepCircuit(failed: Frame, failures: readonly Failure[], into: SweepRoom): Circuit {
    const broken = failures.filter((failure) => 'wire' in failure);
    const known = broken.length > 1 ? undefined : circuits.get(broken[0]);
    const nets = known?.nets ?? mergeNets(system, failWires(wires, broken));
    return { nets, live: sweep(failed, nets, into) };
  }

  /** Leaves in `there` the lanes in which the hazard is there, whether they can be reached or not; false when none. */
  function findHazard(view: HazardView): boolean {
    const { line } = view.sweep;
    // With line joined to neutral or earth the fuse has blown: whatever was about to happen, has not.
    const neutral = view.nets.of[system.supply.neutral]! * frame.words;
    const earth = view.nets.of[system.supply.earth]! * frame.words;
    let some = 0;
    for (let w = 0; w < frame.words; w++) {
      there[w] = frame.used & hazard.lanes(view, w, watch) & ~(line[neutral + w]! | line[earth + w]!);
      some |= there[w]!;
    }
    return some !== 0;
  }

  /** A state in which the hazard is there with these failures, or undefined when there is none. */
  return function strike(failures: readonly Failure[]): Config | undefined {
    const failed = failFrame(failSystem(system, failures));
    const { nets, live } = circuitOf(failed, failures);
    sources.forEach((part, g) => {
      sweepWork(
        failed,
        nets,
        live,
        failed.work.find((work) => work.part === part),
        gives[g]!,
      );
    });
    // Often the hazard is there in no state at all: then nobody need ask which states can be reached.
    const heat = heatIn(failed, failures);
    if (!findHazard({ frame: failed, nets, sweep: live, heat, gives })) return undefined;
    sweepMoves(failed, nets, live, moves);
    const places = starts.map((place) => failPlace(system, failures, place));
    exploreLanes(failed, moves, reach, places);
    const met = hazard.scope === 'rest' ? reach.judged : reach.met;
    for (let w = 0; w < frame.words; w++) {
      const states = met[w]! & there[w]!;
      if (states === 0) continue;
      const lane = 31 - Math.clz32(states & -states);
      return {
        inputs: frame.combinations[(w % frame.blocks) * 32 + lane]!,
        place: Math.floor(w / frame.blocks),
      };
    }
    return undefined;
  };
}
