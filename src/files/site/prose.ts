import { plainText } from './plainText.ts';

/** Components whose own words the engine or another file makes: they have no prose of the author's but their captions. */
const made = /<(Live|Ask|Check|Worked|Inside|Rests|Steps|Job|WhatIf)\b[\s\S]*?\/>/g;
const caption = /\bsays: (?:'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)"|`([^`]*)`)/g;

/**
 * The sentences that an author wrote in a lesson, captions of live views included, tables left out. Headings and
 * items of lists count as sentences.
 */
export function sentencesOf(mdx: string): string[] {
  const captions = [...mdx.matchAll(caption)].map(([, a, b, c]) => a ?? b ?? c ?? '');
  const running = mdx
    .replace(made, ' ')
    .replace(/^\|.*$/gm, '')
    .replace(/^#+ (.*)$/gm, (_, heading: string) => (/[.?]$/.test(heading) ? heading : `${heading}.`))
    .replace(/^\s*(?:\d+\.|-) (.*)$/gm, (_, item: string) => (/[.?:]$/.test(item) ? item : `${item}.`));
  return [plainText(running), ...captions]
    .flatMap((text) => text.split(/(?<=[.?:!]["”’)]?)\s+/))
    .map((sentence) => sentence.trim())
    .filter((sentence) => /[a-z]/i.test(sentence));
}

/** The words of a sentence, as they are written. */
export const wordsOf = (sentence: string): string[] => sentence.match(/[A-Za-z]+(?:[’'-][A-Za-z]+)*/g) ?? [];
