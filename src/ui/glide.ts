/** How the page scrolls to something: smoothly, unless the learner asked for less motion. */
export const glide = (): ScrollBehavior =>
  matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth';
