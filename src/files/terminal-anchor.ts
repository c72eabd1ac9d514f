/** The place of a terminal on the page of its kind: `HW-ON` is at `terminal-hw-on`. */
export const terminalAnchor = (id: string): string =>
  `terminal-${id
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')}`;
