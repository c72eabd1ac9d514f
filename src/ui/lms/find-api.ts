/** The published way up stops after so many windows: a page that frames itself would never end. */
const MOST_LEVELS = 500;

/** Something that lives in the platform's window and is called by name. */
export type RawApi = Readonly<Record<string, (...args: string[]) => unknown>>;

/** A window as far as the search sees it: reading from another site's throws. */
export interface Level {
  readonly parent: Level;
  readonly opener: unknown;
}

function apiIn(level: Level, name: string): RawApi | undefined {
  try {
    const found = (level as unknown as Record<string, unknown>)[name];
    return typeof found === 'object' && found !== null ? (found as RawApi) : undefined;
  } catch {
    // Another site's window: the platform may stand above it.
    return undefined;
  }
}

function upward(start: Level, name: string): RawApi | undefined {
  let level = start;
  for (let k = 0; k < MOST_LEVELS; k++) {
    const found = apiIn(level, name);
    if (found) return found;
    if (level.parent === level) return undefined;
    level = level.parent;
  }
  return undefined;
}

/**
 * Finds the platform's object by its name (`API`, `API_1484_11`): in this window and those around it, then in the
 * window that opened it, and those around that one.
 */
export function findApi(start: Level, name: string): RawApi | undefined {
  let level = start;
  for (let k = 0; k < MOST_LEVELS; k++) {
    const found = upward(level, name);
    if (found) return found;
    const next = openerOf(level);
    if (!next) return undefined;
    level = next;
  }
  return undefined;
}

/** The window that opened this one, or the outermost one around it. */
function openerOf(level: Level): Level | undefined {
  let top = level;
  for (let k = 0; k < MOST_LEVELS && top.parent !== top; k++) top = top.parent;
  for (const one of [level, top]) {
    try {
      if (one.opener) return one.opener as Level;
    } catch {
      // Another site's window keeps its opener to itself.
    }
  }
  return undefined;
}
