/** The terminal under a point of the window, by the nearest element that names one. */
export const terminalAt = (x: number, y: number): string | undefined =>
  document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-terminal]')?.dataset.terminal;
