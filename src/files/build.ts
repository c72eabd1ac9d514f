import { buildSystem } from '../engine/model/build.ts';
import type { System, SystemSpec } from '../engine/model/system.ts';
import { findKind, kindNames } from '../engine/parts/index.ts';
import { FileError, quote, show } from './error.ts';
import { placeAt } from './place.ts';
import { oneOf } from './suggest.ts';

/**
 * Makes a system ready for the engine.
 * @throws FileError when a part is of no known kind, or when the engine cannot put the pieces together
 */
export function buildChecked(spec: SystemSpec, file: string): System {
  for (const [id, { kind, options }] of Object.entries(spec.parts)) {
    if (findKind(kind, options ?? {})) continue;
    const place = placeAt(['parts', id, 'kind']);
    throw new FileError({ file, place, expected: oneOf(kind, kindNames()), found: show(kind) });
  }
  try {
    return buildSystem(spec, findKind);
  } catch (error) {
    const found = quote(error instanceof Error ? error.message : String(error));
    throw new FileError({ file, place: placeAt([]), expected: 'a system that fits together', found });
  }
}
