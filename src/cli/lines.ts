import { MOST_BYTES } from '../files/attempt.ts';

const NEWLINE = 10;

/** A line without its end, or undefined for one that is longer than 1 MiB: it is passed over, not kept. */
export type Line = Uint8Array | undefined;

/** Cuts a stream of bytes into lines: for each piece that arrives, the lines that end in it. The last may lack its end. */
export async function* linesOf(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Line[]> {
  let kept: Uint8Array[] = [];
  let length = 0;
  const keep = (bytes: Uint8Array) => {
    length += bytes.length;
    if (length > MOST_BYTES) kept = [];
    else if (bytes.length > 0) kept.push(bytes);
  };
  const take = (): Line => {
    const line = length > MOST_BYTES ? undefined : kept.length === 1 ? kept[0] : Buffer.concat(kept);
    kept = [];
    length = 0;
    return line;
  };
  for await (const piece of pieces) {
    const lines: Line[] = [];
    let start = 0;
    for (let end = piece.indexOf(NEWLINE); end >= 0; end = piece.indexOf(NEWLINE, start)) {
      keep(piece.subarray(start, end));
      lines.push(take());
      start = end + 1;
    }
    keep(piece.subarray(start));
    if (lines.length > 0) yield lines;
  }
  if (length > 0) yield [take()];
}
