import type { PartKind, PartOptions } from '../model/part.ts';

/** A strip of joining terminals, numbered from 1: `ways` of them, twelve unless the system says otherwise. */
export function strip(options: PartOptions): PartKind {
  const ways = Number(options.ways ?? 12);
  return {
    kind: 'strip',
    title: 'Terminal strip',
    terminals: Array.from({ length: ways }, (_, k) => ({
      id: String(k + 1),
      core: 'black',
      duty: 'joint',
      does: 'Joins whatever is landed in it.',
    })),
  };
}
