import type { System } from '../model/system.ts';

/** Configurations above which holding every state side by side takes longer than keeping sets of them as diagrams. */
const MOST = 1 << 18;

/** Configurations of a system: combinations of inputs times places of its mechanisms. */
export const configurations = ({ places, inputs }: System): number => places * 2 ** inputs.length;

/** Whether a system has too many states to list or hold one by one. */
export const isWide = (system: System): boolean => configurations(system) > MOST;
