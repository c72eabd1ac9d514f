/*
  Times as the standards write them. Each takes milliseconds: a length of time, or since 1970.
*/

const two = (count: number): string => String(count).padStart(2, '0');

/** CMITimespan of SCORM 1.2: `0001:02:03.45`. It holds 9,999 hours. */
export function timespan12(length: number): string {
  const hundredths = Math.min(Math.max(0, Math.floor(length / 10)), 9999 * 360_000 + 359_999);
  const seconds = Math.floor(hundredths / 100);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return `${String(h).padStart(4, '0')}:${two(m)}:${two(s)}.${two(hundredths % 100)}`;
}

/** CMITime of SCORM 1.2: the time of day by this device's clock. */
export function clock12(at: number): string {
  const day = new Date(at);
  return [day.getHours(), day.getMinutes(), day.getSeconds()].map(two).join(':');
}

/** A duration of ISO 8601 with hundredths of a second at most: `PT1H2M3.45S`. */
export function duration(length: number): string {
  const hundredths = Math.max(0, Math.floor(length / 10));
  const [h, m] = [Math.floor(hundredths / 360_000), Math.floor(hundredths / 6000) % 60];
  const s = (hundredths % 6000) / 100;
  return `PT${h > 0 ? `${h}H` : ''}${m > 0 ? `${m}M` : ''}${s}S`;
}

/** A moment of ISO 8601 in UTC, to a tenth of a second: a zone may stand behind a fraction only (SCORM 2004 RTE 4.1.1.7). */
export const moment = (at: number): string => `${new Date(at).toISOString().slice(0, 21)}Z`;
