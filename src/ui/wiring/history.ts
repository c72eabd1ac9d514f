import { type Wire, wireKey } from '../../engine/model/wiring.ts';

/** The wirings a learner has had, and which one is on the board. What was undone is there until something new is done. */
export interface History {
  readonly states: readonly (readonly Wire[])[];
  readonly at: number;
}

/** Undo reaches back this far. */
const DEPTH = 500;

export const begin = (wires: readonly Wire[]): History => ({ states: [wires], at: 0 });
export const current = ({ states, at }: History): readonly Wire[] => states[at] ?? [];
export const canUndo = ({ at }: History): boolean => at > 0;
export const canRedo = ({ states, at }: History): boolean => at < states.length - 1;
export const undo = (h: History): History => (canUndo(h) ? { ...h, at: h.at - 1 } : h);
export const redo = (h: History): History => (canRedo(h) ? { ...h, at: h.at + 1 } : h);

/** Puts a new wiring on the board; a wiring equal to the present one changes nothing. */
export function record(history: History, wires: readonly Wire[]): History {
  const keys = (list: readonly Wire[]) => list.map(wireKey).join();
  if (keys(wires) === keys(current(history))) return history;
  const states = [...history.states.slice(0, history.at + 1), wires].slice(-DEPTH);
  return { states, at: states.length - 1 };
}

export const withWire = (wires: readonly Wire[], wire: Wire): readonly Wire[] =>
  wires.some((other) => wireKey(other) === wireKey(wire)) ? wires : [...wires, wire];

export const withoutWire = (wires: readonly Wire[], key: string): readonly Wire[] =>
  wires.filter((wire) => wireKey(wire) !== key);
