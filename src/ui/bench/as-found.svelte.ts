import type { Site } from '../../engine/grade/as-found-parts.ts';
import type { AsFoundAnswer, AsFoundQuestion } from './as-found.worker.ts';
import type { BenchLayout } from './library.ts';

export type AsFoundResult = Exclude<AsFoundAnswer, { progress: number }>;

/** One comparison with the library, run off the main thread; a new one ends it. */
export class AsFoundSearch {
  result = $state.raw<AsFoundResult | undefined>();
  /** 0 to 1 while it runs. */
  progress = $state<number | undefined>();
  #worker: Worker | undefined;

  ask(site: Site, library: readonly BenchLayout[]): void {
    this.stop();
    this.result = undefined;
    this.progress = 0;
    const worker = new Worker(new URL('./as-found.worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<AsFoundAnswer>) => {
      if ('progress' in data) {
        this.progress = data.progress;
        return;
      }
      this.result = data;
      this.stop();
    };
    const question: AsFoundQuestion = { site, library };
    worker.postMessage(question);
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.progress = undefined;
  }

  clear(): void {
    this.stop();
    this.result = undefined;
  }
}
