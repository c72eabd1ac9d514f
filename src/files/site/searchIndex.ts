import lunr from 'lunr';
import { loadGlossary } from './glossary.ts';
import { loadJobCards } from './jobCards.ts';
import { loadLessons } from './lessons.ts';
import { plainText } from './plainText.ts';
import { whatIfPages } from './what-if.ts';

/** A thing that can be found. */
export interface Entry {
  kind: 'Lesson' | 'Term' | 'Job' | 'Calculator' | 'What if';
  /** From the site's root, with its leading slash. */
  to: string;
  title: string;
  /** Other names, with commas between. */
  also: string;
  text: string;
}

/** What the search page fetches: the entries, and the index over their places in the list. */
export interface SearchFile {
  entries: Entry[];
  index: object;
}

/** Everything that can be found in content: jobs, lessons, terms, and systems to fail parts of. */
export function searchEntries(root?: string): Entry[] {
  return [
    ...loadJobCards(root).map(
      ({ id, title, brief }): Entry => ({
        kind: 'Job',
        to: `/jobs/${id}/`,
        title,
        also: '',
        text: plainText(brief),
      }),
    ),
    ...loadLessons(root).map(
      ({ slug, title, summary, body }): Entry => ({
        kind: 'Lesson',
        to: `/lessons/${slug}/`,
        title,
        also: '',
        text: `${summary} ${plainText(body)}`,
      }),
    ),
    ...whatIfPages(root).map(
      ({ spec, choices }): Entry => ({
        kind: 'What if',
        to: `/what-if/${spec.id}/`,
        title: `What if something fails? ${spec.title}`,
        also: 'faults, failures, layers of protection',
        text: `Fail a part and see where the heat goes. ${choices.map(({ title }) => title).join('. ')}.`,
      }),
    ),
    ...loadGlossary(root).map(
      ({ id, term, also, says }): Entry => ({
        kind: 'Term',
        to: `/glossary/#${id}`,
        title: term,
        also: also.join(', '),
        text: says,
      }),
    ),
  ];
}

/** Builds the index. Names weigh more than the words of a text. */
export function buildSearch(entries: Entry[]): SearchFile {
  const index = lunr(function () {
    this.ref('at');
    this.field('title', { boost: 10 });
    this.field('also', { boost: 10 });
    // “Y-plan” and “two-port” are also typed as one word.
    this.field('joined', { boost: 10 });
    this.field('text');
    entries.forEach((entry, at) => {
      const joined = `${entry.title} ${entry.also}`.replace(/(\w)-(?=\w)/g, '$1');
      this.add({ at: String(at), joined, ...entry });
    });
  });
  return { entries, index: index.toJSON() };
}
