import { buildSystem } from '../engine/model/build.ts';
import { findKind } from '../engine/parts/index.ts';
import { type Bench, checkBench } from './bench.ts';
import { benchSpec } from './bench-spec.ts';
import { FileError } from './error.ts';
import { wiresFromLink, wiresToLink } from './link.ts';

/** A link longer than this is not a bench: browsers and mail programs cut longer ones. */
const MOST_LETTERS = 12_000;

const damaged = { problem: 'The link is damaged: copy it again, whole.' } as const;

/** A bench as text for a link: its name, layout and parts, then its wires as on the wiring page, with a dot between. */
export function benchToLink({ name, layout, parts, wires }: Bench): string {
  const system = buildSystem(benchSpec({ name, parts }), findKind);
  const bytes = new TextEncoder().encode(JSON.stringify({ name, layout, parts }));
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  const safe = text.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
  return `${safe}.${wiresToLink(system, wires)}`;
}

/** The bench a link carries, or a sentence that says why it cannot be read. */
export function benchFromLink(text: string): Bench | { readonly problem: string } {
  if (text.length > MOST_LETTERS) return { problem: 'The link is too long to be a bench.' };
  const [head = '', tail, ...more] = text.split('.');
  if (tail === undefined || more.length > 0) return damaged;
  try {
    const bytes = atob(head.replaceAll('-', '+').replaceAll('_', '/'));
    const json = new TextDecoder('utf-8', { fatal: true }).decode(
      Uint8Array.from(bytes, (letter) => letter.charCodeAt(0)),
    );
    const data: unknown = JSON.parse(json);
    if (typeof data !== 'object' || data === null) return damaged;
    const bench = checkBench({ ...data, bench: 1, wires: [] }, 'The link');
    const wires = wiresFromLink(buildSystem(benchSpec(bench), findKind), tail);
    return 'problem' in wires ? wires : { ...bench, wires };
  } catch (error) {
    return error instanceof FileError ? { problem: `${error.message}.` } : damaged;
  }
}
