import type { InputLabel, SystemPart, SystemSpec } from '../engine/model/system.ts';
import { findKind } from '../engine/parts/index.ts';

interface Named {
  readonly name: string;
  readonly parts: Readonly<Record<string, SystemPart>>;
}

/**
 * A bench as the engine wants it: every switch and thermostat of every part is an input of its own, and there are no
 * pipes and no calls. Parts of an unknown kind have no inputs; building the system names them.
 */
export function benchSpec({ name, parts }: Named): SystemSpec {
  const inputs: Record<string, InputLabel> = {};
  const withInputs: Record<string, SystemPart> = {};
  for (const [id, part] of Object.entries(parts)) {
    const slots = findKind(part.kind, part.options ?? {})?.inputs ?? [];
    const own: Record<string, string> = {};
    for (const { slot } of slots) {
      // The first supply's switch is called what it is called on every layout.
      const input = slot === 'supply' && !inputs.supply ? 'supply' : `${id}-${slot}`;
      own[slot] = input;
      inputs[input] = {
        label: slots.length > 1 ? `${part.short ?? part.name}: ${slot.replaceAll('-', ' ')}` : part.name,
      };
    }
    withInputs[id] = { ...part, inputs: own };
  }
  return { id: 'bench', title: name, parts: withInputs, inputs, pipes: [], demands: [] };
}

/** A layout with the names, strip and cores that its bench has. */
export function layoutSpec(layout: SystemSpec, parts: Named['parts']): SystemSpec {
  const merged = Object.entries(layout.parts).map(([id, part]): [string, SystemPart] => {
    const own = parts[id];
    if (!own) return [id, part];
    const { cores: _, sleeved: __, ...rest } = part;
    const { name, short, options, cores, sleeved } = own;
    return [
      id,
      {
        ...rest,
        name,
        ...(short !== undefined && { short }),
        ...(options && { options }),
        ...(cores && { cores }),
        ...(sleeved && { sleeved }),
      },
    ];
  });
  return { ...layout, parts: Object.fromEntries(merged) };
}

/** The parts of a layout that are wired, as they stand on a bench. */
export function benchParts(layout: SystemSpec): Record<string, SystemPart> {
  const parts: Record<string, SystemPart> = {};
  for (const [id, { kind, name, short, options, cores, sleeved }] of Object.entries(layout.parts)) {
    if ((findKind(kind, options ?? {})?.terminals.length ?? 0) === 0) continue;
    parts[id] = {
      kind,
      name,
      ...(short !== undefined && { short }),
      ...(options && { options }),
      ...(cores && { cores }),
      ...(sleeved && { sleeved }),
    };
  }
  return parts;
}
