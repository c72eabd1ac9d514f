/**
 * A browser records a WebM without its length, so players show none. This writes it in.
 * Elements of EBML (RFC 8794, 4 and 5) and of Matroska (RFC 9559, 5.1): an id, a size, and what is in it.
 */
const SEGMENT = 0x18538067;
const INFO = 0x1549a966;
const SCALE = 0x2ad7b1;
const DURATION = 0x4489;
/** Nanoseconds to a tick where the file does not say (RFC 9559, 5.1.2.9). */
const USUAL_SCALE = 1_000_000;

interface Element {
  readonly id: number;
  /** Where it begins, where its size stands, where its content begins and ends. */
  readonly at: number;
  readonly sizeAt: number;
  readonly from: number;
  readonly to: number;
}

/** A number of variable length: how many bytes it takes, and its value with or without the marker. */
function number(bytes: Uint8Array, at: number, marked: boolean): { length: number; value: number } {
  const first = bytes[at] ?? 0;
  const length = Math.clz32(first) - 23;
  let value = marked ? first : first & (0xff >> length);
  let unknown = (first & (0xff >> length)) === 0xff >> length;
  for (let k = 1; k < length; k++) {
    const byte = bytes[at + k] ?? 0;
    unknown &&= byte === 0xff;
    value = value * 256 + byte;
  }
  return { length, value: !marked && unknown ? Number.POSITIVE_INFINITY : value };
}

function* elements(bytes: Uint8Array, from: number, to: number): Generator<Element> {
  for (let at = from; at < to; ) {
    const id = number(bytes, at, true);
    if (id.length > 4) return;
    const size = number(bytes, at + id.length, false);
    if (size.length > 8) return;
    const start = at + id.length + size.length;
    const end = Math.min(to, start + size.value);
    yield { id: id.value, at, sizeAt: at + id.length, from: start, to: end };
    at = end;
  }
}

const find = (bytes: Uint8Array, id: number, from: number, to: number): Element | undefined => {
  for (const element of elements(bytes, from, to)) if (element.id === id) return element;
  return undefined;
};

/** A size in eight bytes. */
function sizeBytes(size: number): Uint8Array {
  const out = new Uint8Array(8);
  new DataView(out.buffer).setBigUint64(0, BigInt(size) | (1n << 56n));
  return out;
}

/** The length that a WebM states, in milliseconds; undefined where it states none. */
export function durationOf(bytes: Uint8Array): number | undefined {
  const segment = find(bytes, SEGMENT, 0, bytes.length);
  const info = segment && find(bytes, INFO, segment.from, segment.to);
  const duration = info && find(bytes, DURATION, info.from, info.to);
  if (!duration) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset + duration.from, duration.to - duration.from);
  const ticks = view.byteLength === 8 ? view.getFloat64(0) : view.getFloat32(0);
  return (ticks * scaleOf(bytes, info)) / 1e6;
}

function scaleOf(bytes: Uint8Array, info: Element): number {
  const scale = find(bytes, SCALE, info.from, info.to);
  return scale
    ? bytes.subarray(scale.from, scale.to).reduce((sum, byte) => sum * 256 + byte, 0)
    : USUAL_SCALE;
}

/**
 * The same video with its length in it. What is no WebM of an unknown length, or states a length already, comes back as
 * it is: nothing after the place may move that something before it points to.
 * @param ms length in milliseconds
 */
export function withDuration(bytes: Uint8Array<ArrayBuffer>, ms: number): Uint8Array<ArrayBuffer> {
  const segment = find(bytes, SEGMENT, 0, bytes.length);
  const info = segment && find(bytes, INFO, segment.from, segment.to);
  if (!segment || !info || find(bytes, DURATION, info.from, info.to)) return bytes;
  if (number(bytes, segment.sizeAt, false).value !== Number.POSITIVE_INFINITY) return bytes;
  const duration = new Uint8Array(11);
  const view = new DataView(duration.buffer);
  view.setUint16(0, DURATION);
  view.setUint8(2, 0x88);
  view.setFloat64(3, (ms * 1e6) / scaleOf(bytes, info));
  const pieces = [
    bytes.subarray(0, info.sizeAt),
    sizeBytes(info.to - info.from + duration.length),
    bytes.subarray(info.from, info.to),
    duration,
    bytes.subarray(info.to),
  ];
  const out = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    out.set(piece, at);
    at += piece.length;
  }
  return out;
}
