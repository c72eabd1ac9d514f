/** Stands for a pair that may not be chosen: far above any sum of costs. */
export const NEVER = 1e12;

/**
 * Gives every row a column of its own so that the sum of the costs is least.
 *
 * The Hungarian method with potentials: each row in turn finds the shortest way to a free column through reduced
 * costs (Kuhn 1955, Munkres 1957; the O(n²m) form with potentials is from memory).
 *
 * @param cost a row of costs for every row, all of one length, at least as many columns as rows
 * @returns the least sum, and for every row its column
 */
export function assign(cost: readonly (readonly number[])[]): { total: number; columns: number[] } {
  const rows = cost.length;
  const columns = cost[0]?.length ?? 0;
  if (columns < rows) throw new Error(`${rows} rows need as many columns, found ${columns}`);
  const ofRow = new Float64Array(rows + 1);
  const ofColumn = new Float64Array(columns + 1);
  // Rows and columns count from 1 here: 0 is no row, and column 0 holds the row that looks for a place.
  const rowIn = new Int32Array(columns + 1);
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    rowIn[0] = row;
    const nearest = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
    const seen = new Uint8Array(columns + 1);
    let at = 0;
    while (rowIn[at] !== 0) {
      seen[at] = 1;
      const from = rowIn[at]!;
      let step = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let j = 1; j <= columns; j++) {
        if (seen[j]) continue;
        const reduced = cost[from - 1]![j - 1]! - ofRow[from]! - ofColumn[j]!;
        if (reduced < nearest[j]!) {
          nearest[j] = reduced;
          before[j] = at;
        }
        if (nearest[j]! < step) {
          step = nearest[j]!;
          next = j;
        }
      }
      for (let j = 0; j <= columns; j++) {
        if (seen[j]) {
          ofRow[rowIn[j]!]! += step;
          ofColumn[j]! -= step;
        } else nearest[j]! -= step;
      }
      at = next;
    }
    for (; at !== 0; at = before[at]!) rowIn[at] = rowIn[before[at]!]!;
  }
  const chosen = new Array<number>(rows).fill(-1);
  for (let j = 1; j <= columns; j++) if (rowIn[j]! > 0) chosen[rowIn[j]! - 1] = j - 1;
  return { total: chosen.reduce((sum, column, row) => sum + cost[row]![column]!, 0), columns: chosen };
}
