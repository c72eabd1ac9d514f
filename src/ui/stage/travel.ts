import type { Config } from '../../engine/model/system.ts';
import type { Desk } from '../drawings/desk.svelte.ts';

/** Milliseconds after which a valve that has not got to where the slide has it is put there. */
const PATIENCE = 7000;
const STILL = 400;

/**
 * Sets the switches of a slide and lets the valves travel to where it has them; at once for those who want less motion.
 * Valves that race may end elsewhere: then they are put where the slide has them.
 * @returns ends the travel
 */
export function travel(desk: Desk, config: Config): () => void {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches || desk.config.place === config.place) {
    desk.stand(config);
    return () => {};
  }
  const { movers } = desk.system;
  desk.config = { inputs: config.inputs, place: desk.config.place };
  desk.motion.run();
  const began = performance.now();
  let moved = began;
  let last = '';
  let frame = requestAnimationFrame(function look(now) {
    const shown = desk.motion.shown.slice(0, movers.length).join(' ');
    if (shown !== last) moved = now;
    last = shown;
    const there = desk.config.place === config.place && now - moved > STILL;
    if (there || now - moved > 2 * STILL || now - began > PATIENCE) desk.stand(config);
    else frame = requestAnimationFrame(look);
  });
  return () => {
    cancelAnimationFrame(frame);
    desk.motion.stop();
  };
}
