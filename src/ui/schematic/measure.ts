import { SIZE, widthOf } from '../plant/text.ts';

/** What a label tells, and so how it looks. */
export type Tone = 'name' | 'mark' | 'code' | 'badge' | 'note';

/** Words in the drawing; `y` is the baseline. Lengths in drawing units. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly tone: Tone;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of the letters of each tone, drawing units. */
export const sizes: Record<Tone, number> = { name: 12, mark: 11, code: 9, badge: 12, note: 12 };

/** Width of a text in a tone, a little more than it measures. */
export const textWidth = (text: string, tone: Tone): number => (widthOf(text) * sizes[tone]) / SIZE;

/** The room that a label takes: from a little above its capitals to below its descenders. */
export function boxOf({ text, x, y, anchor, tone }: Label): Box {
  const width = textWidth(text, tone);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - 0.8 * sizes[tone], bottom: y + 0.22 * sizes[tone] };
}

/** Words broken into lines no wider than `width`. */
export function wrap(text: string, tone: Tone, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, tone) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
