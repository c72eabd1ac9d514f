import type { System } from '../../../engine/model/system.ts';
import { type Wire, wireKey } from '../../../engine/model/wiring.ts';
import { type Before, type Job, type JobKind, kindOf } from '../../../files/job.ts';

/** A job while it is made: what one kind needs is kept while another is tried. */
export interface JobDraft {
  readonly id: string;
  readonly system: string;
  readonly title: string;
  readonly brief: string;
  readonly summary: string;
  readonly kind: JobKind;
  /** What stands at the start: sound and fixed in a job to complete, to be questioned in one to put right. */
  readonly wires: readonly Wire[];
  /** What a conversion starts from; `reference` is empty where the old wires are its own. */
  readonly from: {
    readonly system: string;
    readonly reference: string;
    readonly wires: readonly Wire[];
    readonly renames: Readonly<Record<string, string>>;
    readonly says: string;
  };
}

export const freshJob = (): JobDraft => ({
  id: '',
  system: '',
  title: '',
  brief: '',
  summary: '',
  kind: 'complete',
  wires: [],
  from: { system: '', reference: '', wires: [], renames: {}, says: '' },
});

/** The job as its file says it. */
export function jobOf({ kind, wires, from, ...words }: JobDraft): Job {
  if (kind === 'convert') return { ...words, from: beforeOf(from) };
  if (kind === 'bare' || wires.length === 0) return words;
  return { ...words, gives: { locked: kind === 'complete', wires } };
}

const beforeOf = ({ system, reference, wires, renames, says }: JobDraft['from']): Before => ({
  system,
  ...(reference === '' ? { wires } : { reference }),
  renames,
  says,
});

/** A job opened to be changed. */
export function draftOf(job: Job): JobDraft {
  const { id, system, title, brief, summary, gives, from } = job;
  const fresh = freshJob();
  return {
    id,
    system,
    title,
    brief,
    summary,
    kind: kindOf(job),
    wires: gives?.wires ?? [],
    from: from
      ? {
          system: from.system,
          reference: from.reference ?? '',
          wires: from.wires ?? [],
          renames: from.renames,
          says: from.says,
        }
      : fresh.from,
  };
}

/** A draft as it was kept, or undefined for what is none. */
export function readJobDraft(data: unknown): JobDraft | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const { from, wires, kind, ...words } = data as Partial<Record<keyof JobDraft, unknown>>;
  const texts = ['id', 'system', 'title', 'brief', 'summary'] as const;
  if (!texts.every((key) => typeof words[key] === 'string')) return undefined;
  if (!['bare', 'complete', 'put-right', 'convert'].includes(String(kind)) || !areWires(wires))
    return undefined;
  const old = from as Partial<Record<keyof JobDraft['from'], unknown>> | null;
  if (typeof old !== 'object' || old === null || !areWires(old.wires)) return undefined;
  if (![old.system, old.reference, old.says].every((text) => typeof text === 'string')) return undefined;
  if (typeof old.renames !== 'object' || old.renames === null) return undefined;
  return data as JobDraft;
}

const areWires = (wires: unknown): wires is Wire[] =>
  Array.isArray(wires) &&
  wires.every(
    (wire) => Array.isArray(wire) && wire.length === 2 && wire.every((end) => typeof end === 'string'),
  );

/**
 * Wires in the order and the direction in which a file is read with ease: landed in the strip where one end is there,
 * the strip's numbers in order, then the terminals of the parts.
 */
export function tidyWires(system: System, wires: readonly Wire[]): Wire[] {
  const node = (terminal: string) => system.nodeOf.get(terminal) ?? Number.POSITIVE_INFINITY;
  const isStrip = (terminal: string) =>
    system.parts[system.partOfNode[node(terminal)] ?? -1]?.kind.kind === 'strip';
  const turned = wires.map(([lead, at]): Wire => {
    if (isStrip(lead) === isStrip(at)) return isStrip(at) && node(lead) > node(at) ? [at, lead] : [lead, at];
    return isStrip(at) ? [lead, at] : [at, lead];
  });
  const distinct = [...new Map(turned.map((wire) => [wireKey(wire), wire])).values()];
  const rank = ([, at]: Wire) => (isStrip(at) ? 0 : system.terminals) + node(at);
  return distinct.sort((a, b) => rank(a) - rank(b));
}
