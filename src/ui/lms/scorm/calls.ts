import type { RawApi } from '../find-api.ts';
import { type Model, whyNotRead, whyNotWrite } from '../limits/model.ts';

/** What one edition of SCORM calls its methods. */
export interface Names {
  readonly start: string;
  readonly get: string;
  readonly set: string;
  readonly commit: string;
  readonly end: string;
  readonly error: string;
  readonly says: string;
}

/** The platform's methods, each call checked on both sides. No call throws, but for a breach while `strict`. */
export interface Calls {
  readonly start: () => boolean;
  /** The value of an element; undefined where the platform does not have it. */
  readonly get: (element: string) => string | undefined;
  /** Whether it was taken. */
  readonly set: (element: string, value: string) => boolean;
  readonly commit: () => boolean;
  readonly end: () => boolean;
  /** What has gone wrong since this was asked last, in words. */
  readonly faults: () => readonly string[];
}

/**
 * Our own limits stand between us and the platform: a platform may be lax, and the next one is not.
 * @param strict whether a breach of the standard by ourselves throws, as in tests; else the value is not sent, and a fault
 */
export function makeCalls(raw: RawApi, names: Names, model: Model, strict = false): Calls {
  let faults: string[] = [];
  const breach = (why: string): false => {
    if (strict) throw new RangeError(why);
    faults.push(`Not sent, because it breaks the standard: ${why}.`);
    return false;
  };
  const call = (method: string, ...args: string[]): string | undefined => {
    try {
      const does = raw[method];
      if (typeof does !== 'function') throw new TypeError('there is no such method');
      return String(does.call(raw, ...args));
    } catch (problem) {
      faults.push(`${method} failed: ${problem instanceof Error ? problem.message : String(problem)}.`);
      return undefined;
    }
  };
  /** What the platform says of its last call; its number and words are untrusted, and only shown. */
  const lastError = (): string => {
    const before = faults;
    faults = [];
    const code = call(names.error) ?? '';
    const says = code === '' || code === '0' ? '' : (call(names.says, code) ?? '');
    faults = before;
    return code === '' || code === '0'
      ? ''
      : [`error ${code.slice(0, 10)}`, says.slice(0, 120)].filter(Boolean).join(', ');
  };
  const told = (method: string, ...args: string[]): boolean => {
    const answer = call(method, ...args);
    if (answer === 'true') return true;
    if (answer !== undefined) {
      const about = args[0] ? `${method} ${args[0]}` : method;
      const why = lastError();
      faults.push(`${about} was refused${why && `: ${why}`}.`);
    }
    return false;
  };
  return {
    start: () => told(names.start, ''),
    get: (element) => {
      const why = whyNotRead(model, element);
      if (why !== undefined) {
        breach(why);
        return undefined;
      }
      const answer = call(names.get, element);
      if (answer !== '') return answer === 'undefined' || answer === 'null' ? undefined : answer;
      // An empty answer is a value, or means that the platform has no such element: its error tells which.
      return /^error (2|401|402)/.test(lastError()) ? undefined : '';
    },
    set: (element, value) => {
      const why = whyNotWrite(model, element, value);
      return why === undefined ? told(names.set, element, value) : breach(why);
    },
    commit: () => told(names.commit, ''),
    end: () => told(names.end, ''),
    faults: () => {
      const now = [...new Set(faults)];
      faults = [];
      return now;
    },
  };
}
