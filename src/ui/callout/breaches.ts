import type { Breach } from '../../engine/diagnose/breach.ts';

/** What a breach could have done, and what to do instead. */
export interface Warning {
  readonly could: string;
  readonly instead: string;
}

/** For each breach (common practice). */
export const warnings: Readonly<Record<Breach, Warning>> = {
  'cover-off-live': {
    could:
      'Behind the cover are bare screws at 230\u00a0V. A slip with the cover or the screwdriver puts your hand on one.',
    instead: 'Isolate first. Take the cover off dead, prove dead, and only then let anybody switch on again.',
  },
  'hand-in-live': {
    could: 'Line through your hand to earth can stop your heart. Nobody feels it coming.',
    instead: 'Take your hands out. Isolate, lock off and prove dead before you touch a wire.',
  },
  'continuity-live': {
    could: 'A meter on ohms is nearly a short circuit to the mains. It can burst in your hand.',
    instead: 'Isolate and prove dead. Continuity and ohms are for dead circuits only.',
  },
  'not-identified': {
    could: 'A second supply, from a timer or an immersion, could still have been live in the same box.',
    instead: 'Find every supply first. Switch each one off and test each pair.',
  },
  'not-locked': {
    could:
      'Somebody wants a hot bath, finds the switch off and turns it on while your fingers are on the wire.',
    instead: 'Lock it off, keep the key, and hang a notice on it.',
  },
  'tester-not-proved': {
    could:
      'With a flat battery or a broken lead the tester calls a live wire dead. You would have believed it.',
    instead: 'Prove the tester on a known source, then test every pair again.',
  },
  'pairs-left-out': {
    could: 'With line and neutral crossed, or a neutral lost, the pair you left out can be the live one.',
    instead: 'Test line to neutral, line to earth and neutral to earth.',
  },
  'tester-not-proved-again': {
    could:
      'If the tester died half way, “dead” meant nothing, and the wire under your fingers could have been live.',
    instead: 'Prove it again on the same source after the last pair.',
  },
  'live-before-dead': {
    could: 'You made bare screws live without need. Most faults can be found with the supply off.',
    instead: 'Look for the fault dead first. Test live only where nothing else will tell.',
  },
};
