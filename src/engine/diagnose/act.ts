import type { Settings } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import type { Test } from './evidence.ts';
import type { DeadPair, Setup } from './setup.ts';
import * as visit from './visit.ts';

/** One thing done on a visit. Acts played one after the other from arrival are the whole visit: see `replay.ts`. */
export type Act =
  | { readonly do: 'operate'; readonly settings: Settings }
  | { readonly do: 'identify'; readonly supply: string }
  | { readonly do: 'isolate' }
  | { readonly do: 'lock' }
  | { readonly do: 'prove' }
  | { readonly do: 'dead-test'; readonly pair: DeadPair }
  | { readonly do: 'open'; readonly part: string }
  | { readonly do: 'close'; readonly part: string }
  | { readonly do: 'lift'; readonly wire: Wire }
  | { readonly do: 'land'; readonly wire: Wire }
  | { readonly do: 'bridge'; readonly between: Wire }
  | { readonly do: 'unbridge'; readonly between: Wire }
  | { readonly do: 'reset' }
  | { readonly do: 'lever'; readonly valve: string }
  | { readonly do: 'swap'; readonly part: string }
  /** Looks, listens, or puts an instrument on two terminals. */
  | { readonly do: 'test'; readonly test: Test };

/** What an act leads to: see `visit.ts`. Throws an Error for a part, wire or setting that is not there. */
export function perform(setup: Setup, act: Act): visit.Done {
  switch (act.do) {
    case 'operate':
      return visit.operate(setup, act.settings);
    case 'identify':
      return visit.identify(setup, act.supply);
    case 'isolate':
      return visit.isolate(setup);
    case 'lock':
      return visit.lockOff(setup);
    case 'prove':
      return visit.proveTester(setup);
    case 'dead-test':
      return visit.testDead(setup, act.pair);
    case 'open':
      return visit.takeCover(setup, act.part);
    case 'close':
      return visit.replaceCover(setup, act.part);
    case 'lift':
      return visit.lift(setup, act.wire);
    case 'land':
      return visit.land(setup, act.wire);
    case 'bridge':
      return visit.bridge(setup, ...act.between);
    case 'unbridge':
      return visit.unbridge(setup, ...act.between);
    case 'reset':
      return visit.resetCutOut(setup);
    case 'lever':
      return visit.lever(setup, act.valve);
    case 'swap':
      return visit.swap(setup, act.part);
    case 'test':
      return act.test.kind === 'reads' ? visit.measureWith(setup, act.test) : visit.look(setup);
  }
}
