import type { PartKind } from '../../engine/model/part.ts';

/** A contact or a load in a row of its own, between a node on the left and one on the right. */
export interface Row {
  readonly what: 'contact' | 'load';
  readonly id: string;
  readonly left: string;
  readonly right: string;
  /** The same node stands on this side in the row above: they are joined there, and it is not named again. */
  readonly joinsLeft: boolean;
  readonly joinsRight: boolean;
}

type Piece = Omit<Row, 'joinsLeft' | 'joinsRight'>;
const turned = ({ left, right, ...rest }: Piece): Piece => ({ ...rest, left: right, right: left });

/** Contacts and loads in rows, so ordered and turned that nodes they share lie one under the other where they can. */
export function rowsOf({ contacts = [], loads = [] }: PartKind): readonly Row[] {
  const left: Piece[] = [
    ...contacts.map(({ id, between: [a, b] }): Piece => ({ what: 'contact', id, left: a, right: b })),
    ...loads.map(({ id, between: [a, b] }): Piece => ({ what: 'load', id, left: a, right: b })),
  ];
  const uses = (node: string) => left.filter((row) => row.left === node || row.right === node).length;
  const placed: Piece[] = [];
  while (left.length > 0) {
    const last = placed.at(-1);
    const options = left.flatMap((piece) => [piece, turned(piece)]);
    // First what shares a node with the row above; among these what leaves the node soonest done with.
    const worth = (piece: Piece): number =>
      (last && piece.left === last.left ? 20 - uses(piece.right) : 0) +
      (last && piece.right === last.right ? 18 - uses(piece.left) : 0) +
      (last ? 0 : uses(piece.left) - 0.1 * uses(piece.right)) -
      (options.indexOf(piece) % 2) * 0.05;
    const next = options.reduce((best, piece) => (worth(piece) > worth(best) ? piece : best));
    placed.push(next);
    left.splice(
      left.findIndex(({ what, id }) => what === next.what && id === next.id),
      1,
    );
  }
  return placed.map((row, k): Row => {
    const above = placed[k - 1];
    return { ...row, joinsLeft: above?.left === row.left, joinsRight: above?.right === row.right };
  });
}
