/** What breaks safe working on a visit. A closed list: each code has its sentence below. */
export type Breach =
  | 'cover-off-live'
  | 'hand-in-live'
  | 'continuity-live'
  | 'not-identified'
  | 'not-locked'
  | 'tester-not-proved'
  | 'pairs-left-out'
  | 'tester-not-proved-again'
  | 'live-before-dead';

/** One sentence each. The steps follow the safe isolation procedure that the trade teaches (common practice). */
export const breachSays: Readonly<Record<Breach, string>> = {
  'cover-off-live': 'You took a cover off with the supply on.',
  'hand-in-live': 'You put a hand into an enclosure with the supply on.',
  'continuity-live': 'You tested continuity on a live circuit: it can hurt you and break the meter.',
  'not-identified':
    'You went in before you had found every supply: the one you missed could have been on, or come on.',
  'not-locked':
    'You worked on the wiring without locking the supply off: somebody could have switched it on.',
  'tester-not-proved': 'You did not prove the tester on a known source before you tested for dead.',
  'pairs-left-out':
    'You did not test every pair for dead: line to neutral, line to earth and neutral to earth.',
  'tester-not-proved-again':
    'You did not prove the tester again after the dead test: it may have failed meanwhile.',
  'live-before-dead': 'You switched on with a cover off before any dead test: look for the fault dead first.',
};
