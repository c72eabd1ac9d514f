import { mount, tick, unmount } from 'svelte';
import { compose } from './compose.ts';
import { PICTURES } from './picture.ts';
import Slide from './Slide.svelte';
import type { Show } from './show.svelte.ts';

/** Milliseconds for a camera to be where it goes to: the studio has no transitions, but measures twice. */
const SETTLED = 160;

/**
 * Slides drawn out of sight at the size of a picture, one after the other.
 * @param host an element in the stage, whose colours they take
 */
export async function draw(
  host: HTMLElement,
  show: Show,
  at: number,
  { title, laysOut, fonts = '' }: { title: string; laysOut: boolean; fonts?: string },
): Promise<string> {
  const slide = show.slides[at];
  if (!slide) throw new RangeError(`no step ${at + 1}`);
  const { width, height } = PICTURES.hd;
  const light = show.light === 'pointer' ? ({ kind: 'script' } as const) : show.beam;
  const made = mount(Slide, {
    target: host,
    props: {
      slide,
      before: show.slides[at - 1],
      choice: show.source.choice,
      number: at + 1,
      total: show.slides.length,
      longest: show.longest,
      width,
      height,
      letters: show.shownLetters,
      light,
      strokes: show.sheets[at] ?? [],
      laysOut,
    },
  });
  try {
    await document.fonts.ready;
    await tick();
    await new Promise((done) => setTimeout(done, SETTLED));
    const drawn = host.querySelector<HTMLElement>('.slide');
    if (!drawn) throw new Error('The step could not be drawn.');
    return compose(drawn, title, fonts);
  } finally {
    await unmount(made);
  }
}
