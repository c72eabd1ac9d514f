import type { ContactSpec, FailureSpec, PartKind, TerminalSpec } from '../model/part.ts';

const channels = [
  { n: 1, slot: 'hot-water', says: 'hot water' },
  { n: 2, slot: 'heating', says: 'heating' },
] as const;

const terminals = channels.flatMap(({ n, says }): TerminalSpec[] => [
  {
    id: `COM${n}`,
    core: 'brown',
    duty: 'switched',
    does: `Common for ${says}: nothing inside joins it to L.`,
  },
  { id: `ON${n}`, core: 'brown', duty: 'switched', does: `Joined to COM${n} while ${says} is on.` },
  { id: `OFF${n}`, core: 'black', duty: 'switched', does: `Joined to COM${n} while ${says} is off.` },
]);

const contacts = channels.flatMap(({ n, slot }): ContactSpec[] => [
  { id: `${slot} on`, between: [`COM${n}`, `ON${n}`], closed: ({ setting }) => setting[slot] === 'on' },
  { id: `${slot} off`, between: [`COM${n}`, `OFF${n}`], closed: ({ setting }) => setting[slot] === 'off' },
]);

const failures = channels.flatMap(({ slot, says }): FailureSpec[] => [
  {
    id: `${slot} on welded`,
    says: `has its ${says} contact welded on`,
    contacts: { [`${slot} on`]: 'closed', [`${slot} off`]: 'open' },
  },
  {
    id: `${slot} off welded`,
    says: `has its ${says} contact welded off, or has lost its signal`,
    contacts: { [`${slot} on`]: 'open', [`${slot} off`]: 'closed' },
  },
  {
    id: `${slot} on open`,
    says: `never makes its ${says} on contact`,
    contacts: { [`${slot} on`]: 'open' },
  },
  {
    id: `${slot} off open`,
    says: `never makes its ${says} off contact`,
    contacts: { [`${slot} off`]: 'open' },
  },
]);

/**
 * Two-channel wireless receiver: takes the place of a programmer. Unlike a programmer's, its two changeovers are
 * volt-free, so each common needs a link from line (common practice).
 */
export const twoChannelReceiver: PartKind = {
  kind: 'two-channel-receiver',
  title: 'Two-channel wireless receiver',
  terminals: [
    { id: 'L', core: 'brown', duty: 'line', does: 'Permanent line for the receiver itself.' },
    { id: 'N', core: 'blue', duty: 'neutral', does: 'Neutral of the receiver.' },
    ...terminals,
  ],
  inputs: channels.map(({ slot }) => ({ slot, settings: ['off', 'on'] })),
  contacts,
  loads: [{ id: 'electronics', between: ['L', 'N'] }],
  // Assumption: 2 W at 230 V, as nothing is published: 230²/2.
  elements: [{ id: 'electronics', between: ['L', 'N'], ohms: 26_450 }],
  permanentLine: ['L'],
  failures,
};
