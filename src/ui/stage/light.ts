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

interface Around {
  readonly left: number;
  readonly top: number;
}

/** The boxes of a name inside one drawing, cut to the window that it is seen through. */
function boxesIn(pane: Element, name: string, home: Around): Box[] {
  const edge = pane.getBoundingClientRect();
  return [...pane.querySelectorAll(`[data-spot="${CSS.escape(name)}"]`)].flatMap((element) => {
    const box = element.getBoundingClientRect();
    const left = Math.max(box.left, edge.left);
    const top = Math.max(box.top, edge.top);
    const w = Math.min(box.right, edge.right) - left;
    const h = Math.min(box.bottom, edge.bottom) - top;
    return w > 0 && h > 0 ? [{ x: left - home.left, y: top - home.top, w, h }] : [];
  });
}

/** A box made larger all round, but not beyond another. */
function grown({ x, y, w, h }: Box, by: number, edge: Box): Box {
  const left = Math.max(edge.x, x - by);
  const top = Math.max(edge.y, y - by);
  const right = Math.min(edge.x + edge.w, x + w + by);
  const bottom = Math.min(edge.y + edge.h, y + h + by);
  return { x: left, y: top, w: right - left, h: bottom - top };
}

/**
 * The dark round the light as an SVG path with holes, by the even-odd rule; empty when nothing is to be dimmed. Switches
 * and caption stay in the light, and so does a drawing in which nothing that was named can be seen.
 * @param spot what the script puts in the light
 */
export function holes(panes: HTMLElement, light: Light, spot: readonly string[]): string {
  const home = (panes.closest('.slide') ?? panes).getBoundingClientRect();
  const drawings = [...panes.querySelectorAll('[data-pane]')].map((pane) => {
    const { left, top, width: w, height: h } = pane.getBoundingClientRect();
    return { pane, edge: { x: left - home.left, y: top - home.top, w, h } };
  });
  const round = ({ x, y, w, h }: Box, r: number) => roundBox(x, y, w, h, r);
  if (light.kind === 'pointer') {
    if (!light.at) return '';
    const [x, y] = light.at;
    return drawings
      .map(({ edge }) => {
        const r = 0.2 * edge.h;
        const hole = grown({ x: x - r, y: y - r, w: 2 * r, h: 2 * r }, 0, edge);
        return round(edge, 0) + (hole.w > 0 && hole.h > 0 ? round(hole, r) : '');
      })
      .join('');
  }
  const names = light.kind === 'script' ? spot : light.kind === 'chosen' ? light.names : [];
  return drawings
    .map(({ pane, edge }) => {
      const found = names.flatMap((name) => {
        const own = boxesIn(pane, name, home);
        // The pipework has no terminals: there the part that a terminal belongs to stands for it.
        return own.length > 0 ? own : boxesIn(pane, name.split('/')[0] ?? name, home);
      });
      if (found.length === 0) return '';
      const lit = union(found.map((box) => grown(box, 0.012 * home.width, edge)));
      return round(edge, 0) + lit.map((box) => round(box, 14)).join('');
    })
    .join('');
}

type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

const apart = (a: Box, b: Box): boolean =>
  a.x > b.x + b.w || b.x > a.x + a.w || a.y > b.y + b.h || b.y > a.y + a.h;

/** The box that holds both. */
function around(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

/** Boxes that overlap become one, for two holes on top of each other would be dark again. */
export function union(boxes: readonly Box[]): Box[] {
  let out: Box[] = [];
  for (const box of boxes) {
    let whole = box;
    // A box that has grown may meet those it was apart from.
    for (let met = out.filter((other) => !apart(whole, other)); met.length > 0; ) {
      const now = met;
      out = out.filter((other) => !now.includes(other));
      whole = now.reduce(around, whole);
      met = out.filter((other) => !apart(whole, other));
    }
    out.push(whole);
  }
  return out;
}
