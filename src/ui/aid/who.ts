import type { Allowed } from '../../engine/diagnose/expert.ts';

/** Somebody at work: who they are, and what they may do. */
export interface Who {
  readonly id: Allowed;
  readonly says: string;
  readonly may: string;
}

/** Whom everybody is taken for who says nothing else. */
const UNQUALIFIED: Who = {
  id: 'looks',
  says: 'I am not qualified to work on wiring',
  may: 'Look, listen and work the controls. Every cover stays on.',
};

export const WHO: readonly Who[] = [
  UNQUALIFIED,
  {
    id: 'dead',
    says: 'I am competent for dead tests',
    may: 'The same, and tests on a circuit that you isolated and proved dead.',
  },
  {
    id: 'live',
    says: 'I may test live under my firm’s rules',
    may: 'The same, and live tests where a dead one cannot tell.',
  },
];

/** The one at work, by id. */
export const whoIs = (id: Allowed): Who => WHO.find((one) => one.id === id) ?? UNQUALIFIED;
