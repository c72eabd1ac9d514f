/**
 * What each step of a visit costs, about in minutes (common practice, and an assumption as a number). Only their order
 * matters: looking is cheap, opening an enclosure is not, a live test costs more than a dead one, and a part changed
 * for nothing costs most.
 */
export const costs = {
  look: 1,
  operate: 1,
  identify: 1,
  isolate: 1,
  lockOff: 1,
  proveTester: 1,
  deadTest: 2,
  liveTest: 6,
  cover: 4,
  hand: 3,
  lever: 1,
  reset: 1,
  swap: 30,
} as const;
