import type { Layout } from '../../../course/layout.ts';
import type { Act } from '../../../engine/diagnose/act.ts';
import type { Callout } from '../../../engine/diagnose/callout.ts';
import type { Candidate } from '../../../engine/diagnose/candidate.ts';
import type { Step } from '../../../engine/diagnose/expert.ts';
import type { Level } from '../../../engine/diagnose/generate.ts';
import type { Verdict } from '../../../engine/diagnose/judge.ts';
import type { Entry } from '../../../engine/diagnose/replay.ts';
import type { DoubleFault } from '../../../files/double-faults.ts';
import type { LayoutFile } from '../../../files/layout-file.ts';
import type { Answered, Answers, Asked, Left, Made, Question, Sent } from './messages.ts';

interface Waiting {
  readonly give: (answer: never) => void;
  readonly fail: (error: Error) => void;
}

/** The search over everything that may be wrong, off the main thread. Answers come in the order of the questions. */
export class Searcher {
  readonly #worker = new Worker(new URL('./search.worker.ts', import.meta.url), { type: 'module' });
  readonly #waiting = new Map<number, Waiting>();
  #asked = 0;

  constructor() {
    this.#worker.onmessage = ({ data }: MessageEvent<Answered>) => {
      const waiting = this.#waiting.get(data.id);
      this.#waiting.delete(data.id);
      if ('error' in data) waiting?.fail(new Error(data.error));
      else waiting?.give(data.answer as never);
    };
    this.#worker.onerror = ({ message }) => this.#failAll(message || 'the search could not be started');
  }

  /** Begins the search of a callout, from its complaints. */
  begin(callout: Callout, doubles: readonly Candidate[]): Promise<Left> {
    return this.#ask({ do: 'begin', callout: sent(callout, doubles) });
  }

  /** Goes on with one act more and what it showed. */
  tell(entry: Entry): Promise<Left> {
    return this.#ask({ do: 'tell', entry });
  }

  /** What a good engineer would do now; undefined when nothing tells more. */
  next(): Promise<Step | undefined> {
    return this.#ask({ do: 'next' });
  }

  /** What each entry told so far ruled out, in a sentence. */
  cleared(): Promise<readonly string[]> {
    return this.#ask({ do: 'cleared' });
  }

  /** Judges a whole visit. `said` is the id of the candidate that the learner named. */
  judge(
    callout: Callout,
    doubles: readonly Candidate[],
    acts: readonly Act[],
    said: string,
  ): Promise<Verdict> {
    return this.#ask({ do: 'judge', callout: sent(callout, doubles), acts, said });
  }

  /**
   * Makes the callout of an address. `doubles` are those of all systems. Rejects where the system gives no callout at all.
   */
  make(
    { system, alsoCalled, right }: Layout,
    doubles: readonly DoubleFault[],
    seed: number,
    level: Level,
  ): Promise<Made> {
    const layout: LayoutFile = { spec: system.spec, alsoCalled, right, wrong: [] };
    return this.#ask({ do: 'make', layout, doubles, seed, level });
  }

  /** Ends the worker. What was asked and not answered is rejected. */
  stop(): void {
    this.#worker.terminate();
    this.#failAll('the search was stopped');
  }

  #ask<Q extends Question>(question: Q): Promise<Answers[Q['do']]> {
    const id = ++this.#asked;
    return new Promise((give, fail) => {
      this.#waiting.set(id, { give, fail });
      this.#worker.postMessage({ ...question, id } satisfies Asked);
    });
  }

  #failAll(says: string): void {
    for (const { fail } of this.#waiting.values()) fail(new Error(says));
    this.#waiting.clear();
  }
}

const sent = ({ system, ...rest }: Callout, doubles: readonly Candidate[]): Sent => ({
  ...rest,
  spec: system.spec,
  doubles,
});
