/** A slide as one SVG that stands alone: drawings, chips, caption, light and ink, styles written in, nothing fetched. */

import { settle } from '../drawings/settle.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Fonts by name, then what every machine has. */
const withFallback = (family: string): string =>
  /sans-serif/.test(family) ? family : `${family}, 'Segoe UI', Arial, sans-serif`;

/** What nobody sees is left out: it would only weigh. */
const isSeen = (element: Element): boolean =>
  !/^(title|desc)$/i.test(element.tagName) && getComputedStyle(element).display !== 'none';

function make(name: string, attributes: Record<string, string | number>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

const tidy = (value: number): number => Math.round(value * 100) / 100;

interface Corner {
  readonly left: number;
  readonly top: number;
}

/** A drawing of the page as a nested SVG, in its place. Without drawn areas that only carry names. */
function nested(svg: SVGSVGElement, home: Corner): SVGElement {
  const box = svg.getBoundingClientRect();
  const view = svg.viewBox.baseVal;
  const copy = svg.cloneNode(true) as SVGSVGElement;
  settle(svg, copy);
  for (const extra of copy.querySelectorAll('title, desc')) extra.remove();
  for (const rect of copy.querySelectorAll('rect'))
    if (
      /^(transparent|rgba\(0, 0, 0, 0\))$/.test(rect.getAttribute('fill') ?? '') &&
      rect.getAttribute('stroke') === 'none'
    )
      rect.remove();
  const place = { x: box.left - home.left, y: box.top - home.top, width: box.width, height: box.height };
  for (const [name, value] of Object.entries(place)) copy.setAttribute(name, String(tidy(value)));
  copy.setAttribute('viewBox', `${view.x} ${view.y} ${view.width} ${view.height}`);
  return copy;
}

/** The words of a page's element as SVG text, line by line as the page breaks them. */
function wordsOf(element: Element, home: Corner, context: CanvasRenderingContext2D): SVGElement[] {
  const style = getComputedStyle(element);
  const lines: { text: string; left: number; top: number; bottom: number }[] = [];
  for (const node of element.childNodes) {
    if (node.nodeType !== Node.TEXT_NODE) continue;
    for (const { index, 0: word } of (node.textContent ?? '').matchAll(/\S+/g)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const box = range.getBoundingClientRect();
      const line = lines.at(-1);
      if (line && Math.abs(line.top - box.top) < 2) line.text += ` ${word}`;
      else lines.push({ text: word, left: box.left, top: box.top, bottom: box.bottom });
    }
  }
  context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const { fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = context.measureText('Hg');
  return lines.map(({ text, left, top, bottom }) => {
    const words = make('text', {
      x: tidy(left - home.left),
      y: tidy((top + bottom) / 2 - home.top + (up - down) / 2),
      fill: style.color,
      'font-family': withFallback(style.fontFamily.replaceAll('"', "'")),
      'font-size': style.fontSize,
      'font-weight': style.fontWeight,
    });
    words.textContent = text;
    return words;
  });
}

/** A chip's ground and edge. */
function chip(element: Element, home: Corner): SVGElement {
  const style = getComputedStyle(element);
  const { left, top, width, height } = element.getBoundingClientRect();
  return make('rect', {
    x: tidy(left - home.left),
    y: tidy(top - home.top),
    width: tidy(width),
    height: tidy(height),
    rx: tidy(height / 2),
    fill: style.backgroundColor,
    stroke: style.borderTopColor,
    'stroke-width': style.borderTopWidth,
  });
}

/**
 * The slide that stands in the page as an SVG text.
 * @param slide the element of the slide, laid out at the size that the picture is to have
 * @param title of the show
 * @param fonts `@font-face` rules to put inside, for a picture that cannot ask the page for its fonts
 */
export function compose(slide: HTMLElement, title: string, fonts = ''): string {
  const home = slide.getBoundingClientRect();
  const caption = slide.querySelector('[data-caption]')?.textContent?.trim() ?? '';
  const page = make('svg', {
    viewBox: `0 0 ${tidy(home.width)} ${tidy(home.height)}`,
    width: tidy(home.width),
    height: tidy(home.height),
    role: 'img',
  });
  for (const [name, words] of [
    ['title', title],
    ['desc', caption],
  ] as const) {
    const element = make(name, {});
    element.textContent = words;
    page.append(element);
  }
  if (fonts) {
    const style = make('style', {});
    style.textContent = fonts;
    page.append(style);
  }
  page.append(make('rect', { width: '100%', height: '100%', fill: getComputedStyle(slide).backgroundColor }));
  const context = document.createElement('canvas').getContext('2d');
  for (const pane of slide.querySelectorAll('[data-pane]')) {
    const box = pane.getBoundingClientRect();
    // A nested SVG cuts off what is outside it, as the window of the page does.
    const frame = make('svg', {
      x: tidy(box.left - home.left),
      y: tidy(box.top - home.top),
      width: tidy(box.width),
      height: tidy(box.height),
    });
    for (const svg of pane.querySelectorAll('svg')) frame.append(nested(svg, box));
    for (const words of pane.querySelectorAll('li, li *'))
      if (context && !words.closest('svg')) frame.append(...wordsOf(words, box, context));
    page.append(frame);
  }
  for (const element of slide.querySelectorAll('[data-box]')) page.append(chip(element, home));
  for (const element of slide.querySelectorAll('.head *, .caption *'))
    if (context && isSeen(element)) page.append(...wordsOf(element, home, context));
  for (const over of slide.querySelectorAll<SVGSVGElement>('[data-light], [data-ink]'))
    page.append(nested(over, home));
  return new XMLSerializer().serializeToString(page);
}
