import { failPlace } from '../faults/apply.ts';
import type { Bench } from './bench.ts';
import type { Candidate } from './candidate.ts';
import { layOut, mayShort, type Standing, settle } from './rig.ts';
import type { Setup } from './setup.ts';
import { standsFrom, type World } from './world.ts';

/**
 * Every way in which a candidate's system may stand with these settings, however its valves got there: for a visit that
 * nobody saw from its beginning. Never fewer ways than there are, so the true candidate is never lost; a way that no
 * order of settings leads to may be among them. A fuse may have blown at any time, where anything could short.
 */
export function standsAnyhow(bench: Bench, setup: Setup, candidate: Candidate): World {
  const { places } = bench.system;
  const rig = layOut(bench, setup, candidate);
  const starts = new Set<Standing>();
  for (let place = 0; place < places; place++) starts.add(failPlace(bench.system, rig.left, place));
  if (mayShort(rig)) for (const whole of [...starts]) starts.add(whole + places);
  return { candidate, stands: standsFrom(bench, rig, settle(rig, [...starts])) };
}
