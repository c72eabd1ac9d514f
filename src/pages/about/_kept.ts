/** Something that the site keeps in the browser. */
export interface KeptThing {
  readonly what: string;
  /** Where the browser shows it to whoever looks: local storage, a database, the storage of one tab, the offline copy. */
  readonly place: 'local storage' | 'database' | 'this tab' | 'offline copy';
  /** Its name there; `…` stands for the id of a job, a system or a file of one's own. */
  readonly name: string;
  /** How to be rid of this alone. */
  readonly delete: string;
}

/**
 * Everything that the site keeps on a device, and under which name. In a package that a learning platform launches the
 * names carry a mark of the learner after a `~`, so that two who share a machine do not see each other's work.
 */
export const kept: readonly KeptThing[] = [
  {
    what: 'Every answer, when it was given and whether it was right; begun answers; visits to callouts; choices such as the day of an assessment; coursework: code, name and work',
    place: 'database',
    name: 'switched-live',
    delete: 'On the page Progress: Start again',
  },
  {
    what: 'The class of a mark book: the result files that were opened in it',
    place: 'database',
    name: 'switched-live-mark-book',
    delete: 'In the mark book: empty it',
  },
  {
    what: 'That there is a class in the mark book',
    place: 'local storage',
    name: 'switched-live/mark-book',
    delete: 'In the mark book: empty it',
  },
  {
    what: 'That a coursework was begun here',
    place: 'local storage',
    name: 'switched-live/coursework',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'Wires of a job',
    place: 'local storage',
    name: 'switched-live/wiring/1/…',
    delete: 'At the job: Clear',
  },
  {
    what: 'Circuits on the bench, and which one is open',
    place: 'local storage',
    name: 'switched-live/bench/1/…',
    delete: 'On the bench: throw it away',
  },
  {
    what: 'Which circuit is open on the bench',
    place: 'local storage',
    name: 'switched-live/bench-open',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'Notes of a real visit: the system, what was seen and measured; no address and no name unless you type one',
    place: 'local storage',
    name: 'switched-live/aid/1/…',
    delete: 'On site: Start again',
  },
  {
    what: 'Drafts on the tutor’s desk: jobs, scripts, courseworks',
    place: 'local storage',
    name: 'switched-live/author/1/…',
    delete: 'On the desk: throw the draft away',
  },
  {
    what: 'Which draft is open on the desk',
    place: 'local storage',
    name: 'switched-live/author-open/…',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'The stage: size of letters, light or dark, whether letters work as keys',
    place: 'local storage',
    name: 'switched-live/stage',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'What the pen drew on the stage',
    place: 'local storage',
    name: 'switched-live/stage-ink/…',
    delete: 'On the stage: clear',
  },
  {
    what: 'A stage script of your own that was opened',
    place: 'local storage',
    name: 'switched-live/stage-script',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'Light or dark colours, once chosen',
    place: 'local storage',
    name: 'theme',
    delete: 'Menu: Colours, back to Auto',
  },
  {
    what: 'That you were told the site works offline',
    place: 'local storage',
    name: 'offline-told',
    delete: 'Browser: clear this site’s data',
  },
  {
    what: 'That the / key is to be left alone',
    place: 'local storage',
    name: 'slash-off',
    delete: 'Under Accessibility: tick it again',
  },
  {
    what: 'In a package only: a short mark of the learner whom the learning platform named, until the tab is closed',
    place: 'this tab',
    name: 'switched-live/owner',
    delete: 'Close the tab',
  },
  {
    what: 'The pages of this site, so that they open without a connection: nothing of yours is in it',
    place: 'offline copy',
    name: 'switched-live-…',
    delete: 'Browser: clear this site’s data',
  },
];

/** The entry that a name found in the browser belongs to. */
export function keptAs(name: string, place: KeptThing['place']): KeptThing | undefined {
  const [own = ''] = name.split('~');
  return kept.find((one) => {
    if (one.place !== place) return false;
    const open = one.name.endsWith('…');
    return open ? own.startsWith(one.name.slice(0, -1)) : own === one.name;
  });
}
