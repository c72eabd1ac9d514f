/** The spotlight: on what the script says, on what somebody chose, round the pointer, or off. */
export type Light =
  | { readonly kind: 'off' }
  | { readonly kind: 'script' }
  | { readonly kind: 'chosen'; readonly names: readonly string[] }
  | { readonly kind: 'pointer'; readonly at: readonly [x: number, y: number] | undefined };

export const LIGHTS = ['script', 'chosen', 'pointer', 'off'] as const;
export const lightName = {
  script: 'As the script has it',
  chosen: 'On what I choose',
  pointer: 'Round the pointer',
  off: 'Off',
} as const satisfies Record<Light['kind'], string>;

/** A box with round corners as an SVG path. Lengths in pixels of the picture. */
export function roundBox(x: number, y: number, w: number, h: number, r: number): string {
  const c = Math.min(r, w / 2, h / 2);
  const f = (value: number) => Math.round(value * 10) / 10;
  return `M${f(x + c)} ${f(y)}h${f(w - 2 * c)}a${f(c)} ${f(c)} 0 0 1 ${f(c)} ${f(c)}v${f(h - 2 * c)}a${f(c)} ${f(c)} 0 0 1 ${f(-c)} ${f(c)}h${f(2 * c - w)}a${f(c)} ${f(c)} 0 0 1 ${f(-c)} ${f(-c)}v${f(2 * c - h)}a${f(c)} ${f(c)} 0 0 1 ${f(c)} ${f(-c)}z`;
}

/** The boxes of parts and terminals inside the drawings, cut to the windows that they are seen through. */
export function boxesOf(panes: HTMLElement, name: string): { x: number; y: number; w: number; h: number }[] {
  const home = (panes.closest('.slide') ?? panes).getBoundingClientRect();
  return [...panes.querySelectorAll(`[data-spot="${CSS.escape(name)}"]`)].flatMap((element) => {
    const pane = element.closest('[data-pane]')?.getBoundingClientRect();
    const box = element.getBoundingClientRect();
    if (!pane) return [];
    const left = Math.max(box.left, pane.left);
    const top = Math.max(box.top, pane.top);
    const w = Math.min(box.right, pane.right) - left;
    const h = Math.min(box.bottom, pane.bottom) - top;
    return w > 0 && h > 0 ? [{ x: left - home.left, y: top - home.top, w, h }] : [];
  });
}

/**
 * The dark round the light as an SVG path with holes, by the even-odd rule; empty when nothing is to be dimmed.
 * @param spot what the script puts in the light
 */
export function holes(
  panes: HTMLElement,
  light: Light,
  spot: readonly string[],
  { width, height }: { readonly width: number; readonly height: number },
): string {
  // The caption stays in the light.
  const home = (panes.closest('.slide') ?? panes).getBoundingClientRect();
  const area = panes.getBoundingClientRect();
  const bottom = Math.min(height, area.bottom - home.top);
  const dark = `M0 0H${width}V${Math.round(bottom)}H0z`;
  if (light.kind === 'pointer') {
    if (!light.at) return '';
    const [x, y] = light.at;
    const r = 0.16 * Math.min(width, height);
    return dark + roundBox(x - r, y - r, 2 * r, 2 * r, r);
  }
  const names = light.kind === 'script' ? spot : light.kind === 'chosen' ? light.names : [];
  const boxes = names.flatMap((name) => boxesOf(panes, name));
  if (boxes.length === 0) return '';
  const pad = 0.008 * width;
  return dark + union(boxes.map(({ x, y, w, h }) => ({ x: x - pad, y: y - pad, w: w + 2 * pad, h: h + 2 * pad })))
    .map(({ x, y, w, h }) => roundBox(x, y, w, h, 14))
    .join('');
}

type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

/** Boxes that overlap become one, for two holes on top of each other would be dark again. */
export function union(boxes: readonly Box[]): Box[] {
  const left = [...boxes];
  for (let k = 0; k < left.length; k++) {
    for (let j = k + 1; j < left.length; j++) {
      const [a, b] = [left[k]!, left[j]!];
      const apart = a.x > b.x + b.w || b.x > a.x + a.w || a.y > b.y + b.h || b.y > a.y + a.h;
      if (apart) continue;
      const x = Math.min(a.x, b.x);
      const y = Math.min(a.y, b.y);
      left[k] = { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
      left.splice(j, 1);
      // The larger box may meet those it was apart from.
      k = -1;
      break;
    }
  }
  return left;
}
