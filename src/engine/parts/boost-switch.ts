import type { PartKind } from '../model/part.ts';

/** A switch, or a boost timer, that turns an immersion heater on by hand: one pole, made for 16 A (common practice). */
export const boostSwitch: PartKind = {
  kind: 'boost-switch',
  title: 'Boost switch',
  terminals: [
    { id: 'IN', core: 'brown', duty: 'switched', does: 'Feed from the isolator.' },
    { id: 'OUT', core: 'brown', duty: 'switched', does: 'Live while the boost is on.' },
  ],
  inputs: [{ slot: 'boost', settings: ['off', 'on'] }],
  contacts: [
    {
      id: 'boost contact',
      between: ['IN', 'OUT'],
      closed: ({ setting }) => setting.boost === 'on',
      amps: 16,
    },
  ],
  failures: [
    { id: 'welded', says: 'never switches off', contacts: { 'boost contact': 'closed' } },
    { id: 'open', says: 'never switches on', contacts: { 'boost contact': 'open' } },
  ],
};
