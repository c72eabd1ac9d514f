import { withDuration } from './webm.ts';

/** Kinds of WebM, the better first. */
const KINDS = ['video/webm;codecs=vp9', 'video/webm;codecs=vp8', 'video/webm'];
/** Pictures a second: a still needs few, and a player likes to see it come again. */
const RATE = 5;
/** Bits a second: still drawings with fine lines. */
const BITS = 6_000_000;

/** The kind of video that this browser can record, or undefined when it cannot. */
export function recordable(): string | undefined {
  if (typeof MediaRecorder === 'undefined' || !('captureStream' in HTMLCanvasElement.prototype))
    return undefined;
  return KINDS.find((kind) => MediaRecorder.isTypeSupported(kind));
}

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/**
 * Films pictures one after the other, in the time that they take to be seen: a browser records no faster.
 * @param seconds each picture is shown for
 * @param progress told after each picture how many have been filmed
 * @param stopped asked again and again whether somebody wants to stop; what is filmed so far is kept
 * @throws Error when this browser cannot record
 */
export async function record(
  pictures: readonly CanvasImageSource[],
  { width, height, seconds }: { width: number; height: number; seconds: number },
  progress: (done: number) => void,
  stopped: () => boolean,
): Promise<Blob> {
  const kind = recordable();
  if (!kind) throw new Error('This browser cannot record a video. Keep the pictures as a zip file instead.');
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  const [first] = pictures;
  if (!context || !first) throw new Error('There is nothing to film.');
  context.drawImage(first, 0, 0, width, height);
  const stream = canvas.captureStream(0);
  const [track] = stream.getVideoTracks() as CanvasCaptureMediaStreamTrack[];
  const recorder = new MediaRecorder(stream, { mimeType: kind, videoBitsPerSecond: BITS });
  const pieces: Blob[] = [];
  recorder.addEventListener('dataavailable', ({ data }) => pieces.push(data));
  const ended = new Promise<void>((done, fail) => {
    recorder.addEventListener('stop', () => done());
    recorder.addEventListener('error', () => fail(new Error('The recording broke off.')));
  });
  recorder.start(1000);
  const began = performance.now();
  for (const [k, picture] of pictures.entries()) {
    if (stopped()) break;
    const until = began + (k + 1) * seconds * 1000;
    while (performance.now() < until && !stopped()) {
      context.drawImage(picture, 0, 0, width, height);
      track?.requestFrame();
      await wait(Math.min(1000 / RATE, Math.max(0, until - performance.now())));
    }
    progress(k + 1);
  }
  track?.requestFrame();
  const took = performance.now() - began;
  recorder.stop();
  await ended;
  for (const one of stream.getTracks()) one.stop();
  const bytes = new Uint8Array(await new Blob(pieces).arrayBuffer());
  return new Blob([withDuration(bytes, took)], { type: 'video/webm' });
}
