import type { System } from '../../engine/model/system.ts';
import { layOut } from '../plant/layout.ts';
import { readLoops } from '../plant/tree.ts';

/** Whether the pipework can be drawn, every loop of it. */
export function canLayOut(system: System): boolean {
  try {
    for (const loop of readLoops(system)) layOut(system, loop);
    return true;
  } catch {
    return false;
  }
}
