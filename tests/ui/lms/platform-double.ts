import { Scorm12API, Scorm2004API } from 'scorm-again';
import { makeStrict, type Strict } from '../../e2e/support/lms-strict.ts';

export type Data = Readonly<Record<string, unknown>>;
export interface Double extends Strict {
  /** A window in which the platform can be found. */
  readonly level: never;
  /** What it has kept. */
  readonly cmi: () => Data;
  /** Methods that fail from now on, and how. */
  readonly fail: (method: string, how: 'false' | 'throw' | undefined) => void;
}

/** The usual test double with the standard's limits around it, holding what an earlier session left. */
export function makeDouble(standard: 'scorm-1.2' | 'scorm-2004', before: Data = {}): Double {
  const settings = { autocommit: false, logLevel: 5 };
  const inner = standard === 'scorm-1.2' ? new Scorm12API(settings) : new Scorm2004API(settings);
  inner.loadFromJSON(before as never, 'cmi');
  const strict = makeStrict(inner, standard);
  const failing = new Map<string, 'false' | 'throw'>();
  const api = Object.fromEntries(
    Object.entries(strict.api).map(([name, does]) => [
      name,
      (...args: string[]) => {
        const how = failing.get(name);
        if (how === 'throw') throw new Error('the window is gone');
        return how ?? does(...args);
      },
    ]),
  );
  const window: Record<string, unknown> = { [standard === 'scorm-1.2' ? 'API' : 'API_1484_11']: api };
  window.parent = window;
  return {
    ...strict,
    level: window as never,
    cmi: () => (inner.renderCMIToJSONObject() as { cmi: Data }).cmi,
    fail: (method, how) => (how ? failing.set(method, how) : failing.delete(method)),
  };
}
