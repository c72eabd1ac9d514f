/** A stretch of a lesson under one heading. */
export interface LessonSection {
  /** Empty for what stands before the first heading. */
  heading: string;
  /** Where the heading stands in the page; empty likewise. */
  anchor: string;
  /** MDX. */
  body: string;
}

/** The anchor that the site's Markdown gives a heading: `How hot? 60 °C` is `how-hot-60-c`. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}\p{Pc}\- ]/gu, '')
    .replaceAll(' ', '-');

/** Words of a heading without links and marks. */
const wordsOf = (line: string): string =>
  line
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/[*`]/g, '')
    .trim();

/** Cuts a lesson at its headings. The second heading of one name gets `-1` after its anchor, as the page gives it. */
export function sectionsOf(mdx: string): LessonSection[] {
  const seen = new Map<string, number>();
  const [before = '', ...rest] = mdx.split(/^(?=#{2,4} )/m);
  const cut = rest.map((piece): LessonSection => {
    const [first = '', ...lines] = piece.split('\n');
    const heading = wordsOf(first.replace(/^#+ /, ''));
    const plain = anchorOf(heading);
    const times = seen.get(plain) ?? 0;
    seen.set(plain, times + 1);
    return { heading, anchor: times ? `${plain}-${times}` : plain, body: lines.join('\n') };
  });
  return [{ heading: '', anchor: '', body: before }, ...cut];
}
