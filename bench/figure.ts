/** One line of what the benchmark prints. */
export interface Figure {
  readonly what: string;
  readonly value: string;
  /** What the figure should be, and whether it is; left out for a figure that only informs. */
  readonly target?: { readonly says: string; readonly met: boolean };
}

/** A group of figures under a heading; ratios first, because they mean the same on every machine. */
export interface Section {
  readonly title: string;
  readonly figures: readonly Figure[];
}

export const atLeast = (what: string, ratio: number, least: number): Figure => ({
  what,
  value: `${whole(ratio)} ×`,
  target: { says: `≥ ${whole(least)} ×`, met: ratio >= least },
});

export const atMost = (
  what: string,
  amount: number,
  most: number,
  say: (amount: number) => string,
): Figure => ({
  what,
  value: say(amount),
  target: { says: `≤ ${say(most)}`, met: amount <= most },
});

export const whole = (amount: number): string => Math.round(amount).toLocaleString('en-GB');

/** A time given in nanoseconds, in the unit that suits it. */
export function sayTime(ns: number): string {
  if (ns >= 1e9) return `${(ns / 1e9).toPrecision(3)} s`;
  if (ns >= 1e6) return `${(ns / 1e6).toPrecision(3)} ms`;
  if (ns >= 1e3) return `${(ns / 1e3).toPrecision(3)} µs`;
  return `${ns.toPrecision(3)} ns`;
}

/** A size given in bytes, in kilobytes of 1000. */
export const sayKilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;

/** Sections as a table of text; without `judged` no figure is held against its target. */
export function sayTable(sections: readonly Section[], judged: boolean): string {
  const width = Math.max(...sections.flatMap(({ figures }) => figures.map(({ what }) => what.length)));
  return sections
    .map(({ title, figures }) => {
      const lines = figures.map(({ what, value, target }) => {
        const aim = target && judged ? `   ${target.met ? '✓' : '✗'} target ${target.says}` : '';
        return `  ${what.padEnd(width)}  ${value.padStart(12)}${aim}`;
      });
      return [title, ...lines].join('\n');
    })
    .join('\n\n');
}
