/** One kind of package, as its guide tells it. */
export interface PackageGuide {
  /** As the command calls it. */
  readonly id: string;
  readonly title: string;
  /** When to take this one. */
  readonly when: string;
  readonly file: string;
  /** What is in it. */
  readonly gets: readonly string[];
  /** What to do on the platform, in order. */
  readonly steps: readonly string[];
  /** What the platform is told. */
  readonly reports: readonly (readonly [what: string, says: string])[];
  readonly troubles: readonly (readonly [symptom: string, remedy: string])[];
  /** How to see that it works before learners do. */
  readonly check: readonly string[];
}

const SITE =
  'The whole course in one zip, about 7 MB: lessons, questions, jobs and callouts. Nothing is fetched from elsewhere.';
const ONE = 'For one coursework: the same site, which opens at that coursework.';

const ADD =
  'In your course, add an activity or a content item of the kind that takes a package. Upload the zip as it is; do not unpack it.';
const ATTEMPTS =
  'Allow any number of attempts, and let the last one stand, or the highest. A learner leaves and comes back many times: each return should go on where they were, not begin a new attempt.';
const WINDOW =
  'Let it open in a new window, or let the frame take the whole width. The wiring board needs room. On a phone a new window is best.';
const GRADE = 'Set the grade to come from the score, out of 100, or from whether it is passed.';

const COMMON_REPORTS = [
  [
    'Score',
    'The whole course: the share of objectives that are solid. A coursework: the share of its questions, jobs and visits that are right. A score is never taken back.',
  ],
  [
    'Passed',
    'The whole course: when every objective is solid. A coursework: by the rules that you set in it. It is failed only when nothing is left that could still be answered.',
  ],
] as const;

const SIZE = [
  'The upload is refused as too large',
  'Ask whoever runs the platform to raise the limit for one file, or to upload it from the server’s side.',
] as const;
const POPUP = [
  'Nothing opens',
  'The browser holds back new windows. Allow them for your learning platform, or choose to open it in the page.',
] as const;
const TABS = [
  'Progress jumps back',
  'It is open in two tabs. The one that is closed last reports last. Use one at a time.',
] as const;
const ALONE = [
  'It says that no learning platform was found',
  'It was opened by its address and not from the activity. Open it from the activity. Work done meanwhile stays on the device.',
] as const;

const CHECK = [
  'Enrol a test learner, or use your platform’s view as a learner if it records attempts.',
  'Open the activity and answer one question. Press “Save and leave”.',
  'Look at the report: the attempt is there, not finished, with a time.',
  'Open it again, if you can on another device. It goes on at the same page, and the answer is remembered.',
];

export const guides: readonly PackageGuide[] = [
  {
    id: 'scorm-1.2',
    title: 'SCORM 1.2',
    when: 'Nearly every platform takes it. When in doubt, begin with this one.',
    file: 'switched-live-scorm-1.2.zip',
    gets: [SITE, ONE],
    steps: [
      ADD,
      ATTEMPTS,
      WINDOW,
      GRADE,
      'If your platform asks whether it is done when it is “completed” or “passed”: this standard has one status for both. Choose “passed”.',
    ],
    reports: [
      ...COMMON_REPORTS,
      ['Status', '“incomplete” until it is passed.'],
      [
        'Each answer',
        'What it was about, right or wrong, when, and how long it took. Some platforms do not show this.',
      ],
      [
        'Where they were',
        'The page, and in at most 4,096 letters what was done. That brings the course’s progress back on another device. Long drafts of wirings stay on the device that they were made on.',
      ],
      ['Time', 'Of each session.'],
    ],
    troubles: [
      SIZE,
      POPUP,
      TABS,
      ALONE,
      [
        'Everybody is shown as failed',
        'Your platform has a pass mark of its own and compares every score with it. Take its pass mark away, or make the package with one: until it is reached no score is told then, only “incomplete”.',
      ],
    ],
    check: CHECK,
  },
  {
    id: 'scorm-2004',
    title: 'SCORM 2004, 4th edition',
    when: 'Take it if your platform names this edition. It tells “completed” and “passed” apart and remembers more than SCORM 1.2.',
    file: 'switched-live-scorm-2004.zip',
    gets: [SITE, ONE],
    steps: [
      ADD,
      ATTEMPTS,
      WINDOW,
      GRADE,
      'Leave sequencing and navigation as the package has them: it is one item, and the site has its own menus.',
    ],
    reports: [
      ...COMMON_REPORTS,
      ['Completed', 'When it is passed, or when a coursework is over.'],
      ['Progress', 'From 0 to 1, where the platform shows it.'],
      ['Each answer', 'What it was about, right or wrong, when, and how long it took.'],
      ['Where they were', 'The page, and in at most 64,000 letters what was done.'],
      ['Time', 'Of each session.'],
    ],
    troubles: [
      SIZE,
      POPUP,
      TABS,
      ALONE,
      ['The platform refuses the package', 'It may only know the 2nd or 3rd edition. Use SCORM 1.2 there.'],
    ],
    check: CHECK,
  },
  {
    id: 'cmi5',
    title: 'cmi5',
    when: 'Take it if your college has a learning record store, or a platform that names cmi5 or xAPI.',
    file: 'switched-live-cmi5.zip',
    gets: [SITE, ONE],
    steps: [
      ADD,
      'The platform must hand the page an address to report to. If that is another server than the one that serves the page, that server must allow requests from there.',
      WINDOW,
      'The unit counts as done when it is passed. If you set a mastery score, it takes the place of the rule in the package.',
    ],
    reports: [
      ...COMMON_REPORTS,
      [
        'Statements',
        '“initialized” first, one for each answer, “passed” or “failed” and “completed” at most once, “terminated” last.',
      ],
      [
        'Where they were',
        'In a state document of the record store. It brings the work back on another device.',
      ],
      ['Launched to browse or to review', 'Nothing is reported but that it was opened and closed.'],
    ],
    troubles: [
      SIZE,
      POPUP,
      ALONE,
      [
        'It opens, but says that it may not report',
        'The address can be used once. A reload, or a copied link, uses it a second time. Open the activity again.',
      ],
      [
        'Nothing arrives in the record store',
        'It does not allow requests from the server that the package is on. Whoever runs the record store can allow it.',
      ],
    ],
    check: CHECK,
  },
  {
    id: 'qti',
    title: 'QTI 3',
    when: 'Take it to have questions in your platform’s own question bank. It reports nothing to this site, and learners do not see this site.',
    file: 'switched-live-qti.zip',
    gets: [
      'Questions as items of your platform: one to choose from, several to choose from, an order to find, a number to type.',
      'Circuits are told in words and as a list of wires, for the drawings stay here. Landing leads, setting controls, wiring jobs and callouts fit no standard question: they are left out, and the command says how many.',
      'Other variants with another seed: npm run package -- qti --seed 7 --count 5',
    ],
    steps: [
      'In the question bank choose to import, and then QTI 3. QTI 1.2 and 2.x are other formats.',
      'Upload the zip as it is. Put the questions in a category of their own: you can take them all out again.',
      'Build a quiz out of them as you do with your own.',
    ],
    reports: [
      ['Marks', 'Your platform marks the answers: one point each, nothing for part of an answer.'],
      [
        'Feedback',
        'For a wrong choice: why it is wrong, what would come of it, where to look. Some platforms do not show it.',
      ],
      ['Numbers', 'Typed without the unit. As far off as this course allows still counts.'],
    ],
    troubles: [
      [
        'The platform asks for another version',
        'It does not read QTI 3. Link to the practice pages of this site, or use a SCORM package.',
      ],
      [
        'Some questions are missing after the import',
        'Platforms differ in which kinds they take. Orders and typed numbers are left out most often.',
      ],
      [
        'An answer that should be right is not',
        'A platform that ignores the rules in the item takes one answer only. Try each kind as a learner first.',
      ],
    ],
    check: [
      'Answer one question of each kind as a test learner, once right and once wrong.',
      'For a number, try one that is just within what is allowed.',
    ],
  },
];
