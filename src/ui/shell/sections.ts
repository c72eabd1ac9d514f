/** A section of the site, as the header and the home page name it. */
export interface Section {
  name: string;
  /** From the site's root, with its leading slash. */
  to: string;
}

/** What a learner goes back and forth between. */
export const sections: readonly Section[] = [
  { name: 'Course', to: '/lessons/' },
  { name: 'Jobs', to: '/jobs/' },
  { name: 'Callouts', to: '/callouts/' },
  { name: 'Practice', to: '/practice/' },
  { name: 'Progress', to: '/progress/' },
  { name: 'Systems', to: '/systems/' },
  { name: 'Bench', to: '/bench/' },
];

/** What a learner looks up. */
export const lookUp: readonly Section[] = [
  { name: 'Drawings', to: '/drawings/' },
  { name: 'Parts', to: '/parts/' },
  { name: 'What if?', to: '/what-if/' },
  { name: 'On site', to: '/aid/' },
  { name: 'Calculators', to: '/calculators/' },
  { name: 'Glossary', to: '/glossary/' },
  { name: 'Coursework', to: '/coursework/' },
  { name: 'Stage', to: '/stage/' },
  { name: 'Paper', to: '/paper/' },
  { name: 'For tutors', to: '/guides/tutors/' },
];
