import type { FailureSpec } from './part.ts';

/** How the motor and the spindle of a valve fail, whatever the valve: the motor dies, the spindle sticks where it is. */
export const motorFailures = (positions: readonly string[]): FailureSpec[] => [
  { id: 'motor dead', says: 'has a dead motor', dead: ['motor'] },
  ...positions.map((position) => ({
    id: `stuck ${position}`,
    says: `is stuck ${position}`,
    stuck: position,
  })),
];
