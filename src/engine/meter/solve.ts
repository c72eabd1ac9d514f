/**
 * Solves `rows · x = right` by Gaussian elimination with partial pivoting; `rows` and `right` are used up.
 * Throws a RangeError when the equations have no single answer: the caller must leave out what floats.
 */
export function solve(rows: Float64Array[], right: Float64Array): Float64Array {
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    let best = k;
    for (let r = k + 1; r < size; r++) if (Math.abs(rows[r]![k]!) > Math.abs(rows[best]![k]!)) best = r;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    [right[k], right[best]] = [right[best]!, right[k]!];
    const pivot = rows[k]!;
    if (pivot[k] === 0) throw new RangeError('the equations have no single answer');
    for (let r = k + 1; r < size; r++) {
      const row = rows[r]!;
      const times = row[k]! / pivot[k]!;
      if (times === 0) continue;
      for (let c = k; c < size; c++) row[c]! -= times * pivot[c]!;
      right[r]! -= times * right[k]!;
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    const row = rows[k]!;
    for (let c = k + 1; c < size; c++) right[k]! -= row[c]! * right[c]!;
    right[k]! /= row[k]!;
  }
  return right;
}
