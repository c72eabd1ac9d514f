import { type Closer, compareWithLayouts, type Likeness, lookCloser } from '../../engine/grade/as-found.ts';
import type { Site } from '../../engine/grade/as-found-parts.ts';
import type { BenchLayout } from './library.ts';

export interface AsFoundQuestion {
  readonly site: Site;
  readonly library: readonly BenchLayout[];
}
export type AsFoundAnswer =
  | { readonly progress: number }
  | {
      readonly likenesses: readonly Likeness[];
      readonly tooBig: readonly string[];
      /** The first likeness, looked at closely. */
      readonly closer: Closer | undefined;
    };

const say = (answer: AsFoundAnswer) => postMessage(answer);

self.onmessage = ({ data: { site, library } }: MessageEvent<AsFoundQuestion>) => {
  const asking = compareWithLayouts(site, library);
  for (;;) {
    const step = asking.next();
    if (step.done) {
      const [best] = step.value.likenesses;
      const layout = library.find(({ spec }) => spec.id === best?.layout);
      say({ ...step.value, closer: best && layout ? lookCloser(site, layout, best) : undefined });
      return;
    }
    say({ progress: step.value });
  }
};
