import { href } from '../shell/href.ts';

/** Titles of what a coursework may name, by id. */
export interface Names {
  readonly jobs: Readonly<Record<string, string>>;
  readonly callouts: Readonly<Record<string, string>>;
  readonly systems: Readonly<Record<string, string>>;
}

let waiting: Promise<Names> | undefined;

/** Fetches the titles once. Rejects when they cannot be fetched; the next call tries again. */
export function fetchNames(): Promise<Names> {
  waiting ??= fetch(href('/coursework/names.json')).then(async (answer) => {
    if (!answer.ok)
      throw new Error(`the names of what is to be done could not be fetched (${answer.status})`);
    return (await answer.json()) as Names;
  });
  waiting.catch(() => {
    waiting = undefined;
  });
  return waiting;
}
