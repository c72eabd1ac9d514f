import type { ContactSpec, FailureSpec } from './part.ts';

/** The single-pole changeover that most thermostats have, worked by the slot `call` (common practice). */
export const changeoverContacts: readonly ContactSpec[] = [
  { id: 'call', between: ['COM', 'CALL'], closed: ({ setting }) => setting.call === 'calling' },
  { id: 'satisfied', between: ['COM', 'SAT'], closed: ({ setting }) => setting.call === 'satisfied' },
];

/** How it fails: a changeover welded on one side can no longer reach the other. */
export const changeoverFailures: readonly FailureSpec[] = [
  { id: 'welded calling', says: 'is welded on its call', contacts: { call: 'closed', satisfied: 'open' } },
  { id: 'welded satisfied', says: 'is welded on satisfied', contacts: { call: 'open', satisfied: 'closed' } },
  { id: 'call open', says: 'never makes its call contact', contacts: { call: 'open' } },
  { id: 'satisfied open', says: 'never makes its satisfied contact', contacts: { satisfied: 'open' } },
];
