import type { Answer, FoundSet, Question } from './layers.worker.ts';

/** One search for layers of protection, run off the main thread; it can be stopped, and a new one ends it. */
export class LayerSearch {
  sets = $state.raw<readonly FoundSet[] | undefined>();
  /** How many failures at once the sets shown go up to. */
  most = $state(0);
  progress = $state<{ size: number; done: number } | undefined>();
  #worker: Worker | undefined;

  ask(question: Question): void {
    this.stop();
    this.sets = undefined;
    this.more(question);
  }

  /** Searches deeper, and keeps showing what is known already. */
  more(question: Question): void {
    this.stop();
    const worker = new Worker(new URL('./layers.worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if ('sets' in data) {
        this.sets = data.sets;
        this.most = data.most;
        this.stop();
      } else this.progress = { size: data.size, done: data.progress };
    };
    worker.postMessage(question);
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.progress = undefined;
  }
}
