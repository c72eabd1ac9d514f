/** What the practice page is asked for by the part of its address after the `#`. */
export type Wanted =
  | { readonly kind: 'start' }
  /** One question, by its address. */
  | { readonly kind: 'item'; readonly item: string }
  /** One objective, as long as the learner likes. */
  | { readonly kind: 'objective'; readonly id: string; readonly item?: string | undefined }
  /** A visit to a fault of a family. */
  | { readonly kind: 'visit'; readonly family: string }
  /** A set of so many questions. */
  | { readonly kind: 'mixed' | 'revise'; readonly most: number; readonly item?: string | undefined };

export const LENGTHS = [5, 10, 20] as const;
const USUAL = 10;

/** Reads `#item=…`, `#objective=…`, `#visit=…`, `#mixed=20` or `#revise`; a question shown may follow: `#mixed=5&item=…`. */
export function readHash(hash: string): Wanted {
  const pieces = new Map(
    hash
      .replace(/^#/, '')
      .split('&')
      .map((piece) => {
        const at = piece.indexOf('=');
        return at < 0 ? [piece, ''] : [piece.slice(0, at), piece.slice(at + 1)];
      }) as [string, string][],
  );
  const item = pieces.get('item');
  const id = pieces.get('objective');
  const family = pieces.get('visit');
  if (family) return { kind: 'visit', family };
  if (id) return { kind: 'objective', id, item };
  for (const kind of ['mixed', 'revise'] as const) {
    const length = pieces.get(kind);
    if (length === undefined) continue;
    const most = /^\d{1,2}$/.test(length) ? Math.max(1, Number(length)) : USUAL;
    return { kind, most, item };
  }
  return item ? { kind: 'item', item } : { kind: 'start' };
}

/** The other way round. */
export function writeHash(wanted: Wanted): string {
  if (wanted.kind === 'start') return '#';
  if (wanted.kind === 'item') return `#item=${wanted.item}`;
  if (wanted.kind === 'visit') return `#visit=${wanted.family}`;
  const first = wanted.kind === 'objective' ? `objective=${wanted.id}` : `${wanted.kind}=${wanted.most}`;
  return wanted.item === undefined ? `#${first}` : `#${first}&item=${wanted.item}`;
}
