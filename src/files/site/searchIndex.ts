import lunr from 'lunr';
import { type Packed, pack } from '../search-pack.ts';
import { loadGlossary } from './glossary.ts';
import { loadJobCards } from './jobCards.ts';
import { partPages } from './parts.ts';
import { plainText } from './plainText.ts';
import { calloutEntries } from './searchCallouts.ts';
import { courseEntries } from './searchCourse.ts';
import { partEntries, symptomEntries, systemEntries, terminalEntries } from './searchReference.ts';
import { systemPages } from './systems.ts';
import { whatIfPages } from './what-if.ts';

/** A thing that can be found. */
export interface Entry {
  kind:
    | 'Lesson'
    | 'Skill'
    | 'Term'
    | 'Job'
    | 'Calculator'
    | 'What if'
    | 'System'
    | 'Part'
    | 'Terminal'
    | 'Symptom'
    | 'Callout';
  /** From the site's root, with its leading slash. */
  to: string;
  title: string;
  /** What it belongs to, where the title alone does not say: the system of a symptom, the lesson of a heading. */
  of?: string;
  /** Other names, with commas between. */
  also: string;
  text: string;
}

/** What the search page fetches: the entries, and the index over their places in the list. */
export interface SearchFile {
  entries: Entry[];
  index: Packed;
}

/**
 * A layout stands before the jobs, terms and pages about it that have the same name; a sentence is a skill’s. What a
 * customer says explains nothing, so it comes last.
 */
const weights: Partial<Record<Entry['kind'], number>> = { System: 3, Skill: 3, Part: 1.5, Callout: 0.5 };

/** Everything that can be found in content: systems and their symptoms, parts, jobs, lessons, callouts and terms. */
export function searchEntries(root?: string): Entry[] {
  const systems = systemPages(root);
  const parts = partPages(root);
  return [
    ...systemEntries(systems),
    ...partEntries(parts),
    ...terminalEntries(parts),
    ...symptomEntries(systems),
    ...loadJobCards(root).map(
      ({ id, title, brief }): Entry => ({
        kind: 'Job',
        to: `/jobs/${id}/`,
        title,
        also: '',
        text: plainText(brief),
      }),
    ),
    ...courseEntries(root),
    ...calloutEntries(root),
    ...whatIfPages(root).map(
      ({ spec }): Entry => ({
        kind: 'What if',
        to: `/what-if/${spec.id}/`,
        title: `What if something fails? ${spec.title}`,
        also: 'faults, failures, layers of protection',
        // Its wrong wirings are found as symptoms.
        text: 'Fail a part, in a right wiring or in a wrong one, and see where the heat goes.',
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

/** A name as one word, however its parts are joined: `Y-plan`, `y plan` and `yplan` are all `yplan`. */
const wholeName = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, '');

/** Builds the index. Names weigh more than the words of a text. */
export function buildSearch(entries: Entry[]): SearchFile {
  const index = lunr(function () {
    this.ref('at');
    this.field('title', { boost: 10 });
    this.field('also', { boost: 10 });
    // “HW-OFF” and “two-port” are also typed as one word.
    this.field('joined', { boost: 10 });
    // A whole name as one word: what is called just “Y-plan” stands before what is called “Y-plan with a two-port”.
    this.field('whole', { boost: 10 });
    this.field('text');
    entries.forEach((entry, at) => {
      const hyphened = `${entry.title} ${entry.also}`.match(/\w+(?:-\w+)+/g) ?? [];
      const joined = hyphened.map((word) => word.replaceAll('-', '')).join(' ');
      const whole = [entry.title, ...entry.also.split(',')].map(wholeName).join(' ');
      const text = `${entry.of ?? ''} ${entry.text}`;
      this.add({ ...entry, at: String(at), joined, whole, text }, { boost: weights[entry.kind] ?? 1 });
    });
  });
  return { entries, index: pack(index.toJSON()) };
}
