import { buildSystem } from '../../../src/engine/model/build.ts';
import type { System, SystemPart } from '../../../src/engine/model/system.ts';
import { findKind } from '../../../src/engine/parts/index.ts';
import { must } from './must.ts';

/** A system of a fused spur and one part of each kind named, each called as its kind is, its inputs named as their slots. */
export function onASpur(...kinds: readonly string[]): System {
  const parts = Object.fromEntries(
    ['fused-spur', ...kinds].map((kind): [string, SystemPart] => [kind, { kind, name: kind }]),
  );
  const slots = Object.keys(parts).flatMap((kind) => must(findKind(kind, {})).inputs ?? []);
  const inputs = Object.fromEntries(slots.map(({ slot }) => [slot, { label: slot }]));
  return buildSystem(
    { id: 'on-a-spur', title: 'On a spur', parts, inputs, pipes: [], demands: [] },
    findKind,
  );
}

/** Watts of one load of a part at 230 V, from its ohms. */
export const wattsOf = (kind: string, load: string): number => {
  const element = must(findKind(kind, {})).elements?.find(({ id }) => id === load);
  return 230 ** 2 / must(element, `${kind} ${load}`).ohms;
};
