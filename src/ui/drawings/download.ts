import { settle } from './settle.ts';

const SVG = 'http://www.w3.org/2000/svg';

/**
 * Drawings below each other as one SVG that stands alone: styles written in, light colours, a title and a description
 * inside, nothing fetched. `home` is the element they stand in: its look is light while they are read.
 */
export function standalone(home: HTMLElement, title: string, says: string): string {
  home.classList.add('in-light');
  const shown = [...home.querySelectorAll<SVGSVGElement>('svg:not([data-rings])')];
  const sizes = shown.map((svg) => svg.viewBox.baseVal);
  const width = Math.max(...sizes.map((box) => box.width));
  const height = sizes.reduce((sum, box) => sum + box.height, 0);
  const page = document.createElementNS(SVG, 'svg');
  page.setAttribute('viewBox', `0 0 ${width} ${height}`);
  page.setAttribute('width', String(Math.round(width)));
  page.setAttribute('height', String(Math.round(height)));
  page.setAttribute('role', 'img');
  const say = (name: string, words: string): void => {
    const element = document.createElementNS(SVG, name);
    element.textContent = words;
    page.append(element);
  };
  say('title', title);
  say('desc', says);
  const ground = document.createElementNS(SVG, 'rect');
  for (const [name, value] of [
    ['width', '100%'],
    ['height', '100%'],
    ['fill', '#ffffff'],
  ] as const)
    ground.setAttribute(name, value);
  page.append(ground);
  let y = 0;
  shown.forEach((svg, k) => {
    const box = sizes[k]!;
    const copy = svg.cloneNode(true) as SVGSVGElement;
    settle(svg, copy);
    for (const extra of copy.querySelectorAll('title, desc')) extra.remove();
    for (const [name, value] of [
      ['x', 0],
      ['y', y],
      ['width', box.width],
      ['height', box.height],
    ] as const)
      copy.setAttribute(name, String(value));
    y += box.height;
    page.append(copy);
  });
  home.classList.remove('in-light');
  return new XMLSerializer().serializeToString(page);
}

/** Offers a text to be kept as a file. */
export function keepFile(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
