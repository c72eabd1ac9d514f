import type { Answers, Ask, QuestionOf, Reply } from './talk.ts';

/** More workers than this do not help: each reads the course's files and makes its judges anew. */
const MOST_HANDS = 8;

/** Why an answer never came: the work was stopped. */
export class Stopped extends Error {
  constructor() {
    super('stopped');
    this.name = 'Stopped';
  }
}

/** One worker. Questions are answered in turn. */
export class Hand {
  readonly #worker = new Worker(new URL('./mark.worker.ts', import.meta.url), { type: 'module' });
  readonly #waiting = new Map<number, { done: (answer: never) => void; fail: (why: Error) => void }>();
  #number = 0;

  constructor() {
    this.#worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const waiting = this.#waiting.get(data.number);
      this.#waiting.delete(data.number);
      if ('failed' in data) waiting?.fail(new Error(data.failed));
      else waiting?.done(data.answer as never);
    };
    this.#worker.onerror = (event) =>
      this.#fail(new Error(event.message || 'the worker could not be started'));
  }

  ask<A extends Ask>(question: QuestionOf<A>): Promise<Answers[A]> {
    const number = ++this.#number;
    return new Promise<Answers[A]>((done, fail) => {
      this.#waiting.set(number, { done, fail });
      this.#worker.postMessage({ number, question });
    });
  }

  end(): void {
    this.#worker.terminate();
    this.#fail(new Stopped());
  }

  #fail(why: Error): void {
    const all = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { fail } of all) fail(why);
  }
}

/** As many workers as the machine has processors. */
export class Pool {
  readonly hands: readonly Hand[];

  constructor(count: number = navigator.hardwareConcurrency) {
    this.hands = Array.from({ length: Math.max(1, Math.min(MOST_HANDS, count || 2)) }, () => new Hand());
  }

  /** Gives every worker its next piece as soon as it is free, until the queue, which may grow meanwhile, is empty. */
  async share<T>(queue: T[], each: (hand: Hand, one: T) => Promise<void>): Promise<void> {
    let busy = 0;
    const idle: (() => void)[] = [];
    const wake = () => {
      for (const go of idle.splice(0)) go();
    };
    const work = async (hand: Hand) => {
      for (;;) {
        const one = queue.shift();
        if (one === undefined) {
          if (busy === 0) return wake();
          await new Promise<void>((go) => idle.push(go));
          continue;
        }
        busy++;
        try {
          await each(hand, one);
        } finally {
          busy--;
          wake();
        }
      }
    };
    await Promise.all(this.hands.map(work));
  }

  end(): void {
    for (const hand of this.hands) hand.end();
  }
}
