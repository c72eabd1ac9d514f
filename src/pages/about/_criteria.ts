/** How the site stands to one success criterion of WCAG 2.2. */
export interface Criterion {
  readonly id: string;
  readonly name: string;
  readonly level: 'A' | 'AA';
  readonly met: 'supported' | 'partly' | 'does not apply';
  readonly how: string;
  /** Tests that show it, by their path in the project; empty where it was only looked at, or there is nothing to test. */
  readonly tests: readonly string[];
}

const AXE = 'tests/e2e/every-page.test.ts';
const CONFORMANCE = 'tests/e2e/conformance.test.ts';
const OWN = 'tests/e2e/conformance-site.test.ts';

const none = (id: string, name: string, level: 'A' | 'AA', how: string): Criterion => {
  return { id, name, level, met: 'does not apply', how, tests: [] };
};
const yes = (
  id: string,
  name: string,
  level: 'A' | 'AA',
  how: string,
  ...tests: readonly string[]
): Criterion => ({ id, name, level, met: 'supported', how, tests });
const partly = (
  id: string,
  name: string,
  level: 'A' | 'AA',
  how: string,
  ...tests: readonly string[]
): Criterion => ({ id, name, level, met: 'partly', how, tests });

const NO_MEDIA = 'The site has no recorded sound or film.';

/** Every success criterion of WCAG 2.2 at levels A and AA, in its order. */
export const criteria: readonly Criterion[] = [
  partly(
    '1.1.1',
    'Non-text content',
    'A',
    'Every drawing has a name and says the same in words beside it: a list, a table or a sentence. A drawing on the stage is told by its caption alone.',
    AXE,
    'tests/e2e/drawings.test.ts',
  ),
  none('1.2.1', 'Audio-only and video-only (prerecorded)', 'A', NO_MEDIA),
  none('1.2.2', 'Captions (prerecorded)', 'A', NO_MEDIA),
  none('1.2.3', 'Audio description or media alternative (prerecorded)', 'A', NO_MEDIA),
  none('1.2.4', 'Captions (live)', 'AA', NO_MEDIA),
  none('1.2.5', 'Audio description (prerecorded)', 'AA', NO_MEDIA),
  yes(
    '1.3.1',
    'Info and relationships',
    'A',
    'Headings, lists, tables with heads, fieldsets and regions carry the structure; axe looks for it on every page.',
    AXE,
  ),
  yes(
    '1.3.2',
    'Meaningful sequence',
    'A',
    'The order in the code is the order of reading; pages read without scripts and styles.',
    'tests/e2e/no-script-lesson.test.ts',
  ),
  yes(
    '1.3.3',
    'Sensory characteristics',
    'A',
    'Instructions name things by their words and numbers, not by place or colour alone.',
    'tests/site/words.test.ts',
  ),
  yes('1.3.4', 'Orientation', 'AA', 'No page holds to one orientation.', CONFORMANCE),
  yes(
    '1.3.5',
    'Identify input purpose',
    'AA',
    'The only fields about the learner are a name and a code; the name is marked as one.',
    'tests/site/about.test.ts',
  ),
  yes(
    '1.4.1',
    'Use of colour',
    'A',
    'Cores go by letters or names besides their colour, live by a word and a glow, marks by a shape and a word; sheets are printed without any colour.',
    'tests/e2e/paper.test.ts',
    'tests/e2e/live.test.ts',
  ),
  none('1.4.2', 'Audio control', 'A', 'Nothing makes a sound.'),
  yes(
    '1.4.3',
    'Contrast (minimum)',
    'AA',
    'All pairs of colours are checked by sum, and every page by axe in both themes.',
    'tests/site/colours.test.ts',
    AXE,
  ),
  yes(
    '1.4.4',
    'Resize text',
    'AA',
    'Text grows to 200 % with nothing cut off; lengths follow the text.',
    CONFORMANCE,
  ),
  yes('1.4.5', 'Images of text', 'AA', 'Text is text, in drawings too.', 'tests/e2e/drawings.test.ts'),
  yes(
    '1.4.10',
    'Reflow',
    'AA',
    'Every page reads at 320 px, which is 400 % of 1280, without going sideways. Drawings and wide tables, which need their two dimensions, scroll in a frame of their own; the wiring page has a strip view and a table that need none.',
    CONFORMANCE,
    'tests/e2e/fit.test.ts',
  ),
  yes(
    '1.4.11',
    'Non-text contrast',
    'AA',
    'Edges of controls, the focus and the lines of drawings have 3:1 at least; every core has an edge that contrasts with its ground.',
    'tests/site/colours.test.ts',
  ),
  yes(
    '1.4.12',
    'Text spacing',
    'AA',
    'With the spacing of the criterion nothing is cut off and no page goes sideways.',
    CONFORMANCE,
  ),
  yes(
    '1.4.13',
    'Content on hover or focus',
    'AA',
    'Only terms of the glossary show anything: it stays while pointed at, and Escape closes it.',
    'tests/e2e/glossary-hover.test.ts',
  ),
  yes(
    '2.1.1',
    'Keyboard',
    'A',
    'Wiring, measuring, answering, drawing up coursework: everything but the pen of the stage, which is free drawing, works by keys alone.',
    'tests/e2e/keyboard.test.ts',
    'tests/e2e/items.test.ts',
    'tests/e2e/callout-meter.test.ts',
  ),
  yes('2.1.2', 'No keyboard trap', 'A', 'Tab comes out of every page at its end.', CONFORMANCE),
  yes(
    '2.1.4',
    'Character key shortcuts',
    'A',
    'The / key leads to the search and can be switched off on this page; the letters of the stage can be switched off there.',
    OWN,
    'tests/e2e/stage.test.ts',
  ),
  yes(
    '2.2.1',
    'Timing adjustable',
    'A',
    'Nothing has a time limit. Coursework shows dates and locks nothing by them.',
    'tests/e2e/coursework.test.ts',
  ),
  yes(
    '2.2.2',
    'Pause, stop, hide',
    'A',
    'Valves move for a few seconds when a switch is worked; walks go step by step and stop when asked.',
    'tests/e2e/live.test.ts',
  ),
  yes('2.3.1', 'Three flashes or below threshold', 'A', 'Nothing flashes.'),
  yes('2.4.1', 'Bypass blocks', 'A', 'Each page begins with a link to its main part.', OWN),
  yes('2.4.2', 'Page titled', 'A', 'Each page has a title of its own that says what it is.', OWN),
  yes('2.4.3', 'Focus order', 'A', 'The focus goes the way the page reads.', CONFORMANCE),
  yes(
    '2.4.4',
    'Link purpose (in context)',
    'A',
    'Links say where they lead.',
    AXE,
    'tests/e2e/links.test.ts',
  ),
  yes(
    '2.4.5',
    'Multiple ways',
    'AA',
    'Menu, course map, lists, search and glossary.',
    'tests/e2e/search-keys.test.ts',
  ),
  yes(
    '2.4.6',
    'Headings and labels',
    'AA',
    'Each page has one main heading; fields have labels in words.',
    OWN,
    AXE,
  ),
  yes('2.4.7', 'Focus visible', 'AA', 'A ring of 3 px around whatever has the focus.', CONFORMANCE),
  yes(
    '2.4.11',
    'Focus not obscured (minimum)',
    'AA',
    'Whatever gets the focus is in sight, bars and trays that stay at the edge included.',
    CONFORMANCE,
  ),
  yes(
    '2.5.1',
    'Pointer gestures',
    'A',
    'Nothing needs two fingers or a path; steps of the stage also go by buttons.',
    'tests/e2e/touch.test.ts',
    'tests/e2e/stage.test.ts',
  ),
  yes(
    '2.5.2',
    'Pointer cancellation',
    'A',
    'Things happen when the pointer is lifted; a drag let go elsewhere does nothing; wires have undo.',
    'tests/e2e/keeping.test.ts',
  ),
  yes(
    '2.5.3',
    'Label in name',
    'A',
    'The name of a control begins with the words that are written on it.',
    AXE,
  ),
  none('2.5.4', 'Motion actuation', 'A', 'Nothing is worked by moving the device.'),
  yes(
    '2.5.7',
    'Dragging movements',
    'AA',
    'Every drag has a way without: tap a lead and then a terminal, tap a probe and then a terminal, buttons to move a step.',
    'tests/e2e/touch.test.ts',
    'tests/e2e/callout-meter.test.ts',
    'tests/e2e/items.test.ts',
  ),
  yes(
    '2.5.8',
    'Target size (minimum)',
    'AA',
    'Targets are 24 px at least or have the room of 24 px to themselves; main actions have 44 px.',
    CONFORMANCE,
    'tests/e2e/fit.test.ts',
  ),
  yes('3.1.1', 'Language of page', 'A', 'Every page says that it is in British English.', OWN),
  none('3.1.2', 'Language of parts', 'AA', 'The site has one language.'),
  yes('3.2.1', 'On focus', 'A', 'Focus alone changes nothing but what it shows of itself.', CONFORMANCE),
  yes(
    '3.2.2',
    'On input',
    'A',
    'Choices change what is shown beside them; no page is left and no window opened.',
    'tests/e2e/items.test.ts',
  ),
  yes('3.2.3', 'Consistent navigation', 'AA', 'The menu is the same, in the same order, on every page.', OWN),
  yes(
    '3.2.4',
    'Consistent identification',
    'AA',
    'Same things have the same names on every page: menu, footer, core letters.',
    OWN,
  ),
  yes(
    '3.2.6',
    'Consistent help',
    'A',
    'Every page ends with the same links, in the same order, to cautions, how it judges, and these statements.',
    OWN,
  ),
  yes(
    '3.3.1',
    'Error identification',
    'A',
    'What cannot be read is named in words, with what was expected and where.',
    'tests/e2e/coursework.test.ts',
    'tests/files/error.test.ts',
  ),
  yes(
    '3.3.2',
    'Labels or instructions',
    'A',
    'Fields have labels, and say the form they want before it is given.',
    AXE,
  ),
  yes(
    '3.3.3',
    'Error suggestion',
    'AA',
    'Messages say what would be right, and for a name the nearest known one.',
    'tests/files/error.test.ts',
  ),
  yes(
    '3.3.4',
    'Error prevention (legal, financial, data)',
    'AA',
    'Work can be undone; deleting asks first; a backup is offered before starting again.',
    'tests/e2e/progress.test.ts',
    'tests/e2e/keeping.test.ts',
  ),
  yes(
    '3.3.7',
    'Redundant entry',
    'A',
    'A learner’s code is asked for once a coursework.',
    'tests/e2e/coursework.test.ts',
  ),
  none('3.3.8', 'Accessible authentication (minimum)', 'AA', 'There is nothing to log in to.'),
  yes(
    '4.1.2',
    'Name, role, value',
    'A',
    'Native elements wherever there is one; names and states of the others are checked on every page.',
    AXE,
    'tests/e2e/accessibility.test.ts',
  ),
  yes(
    '4.1.3',
    'Status messages',
    'AA',
    'Verdicts, results and notices are told without moving the focus.',
    'tests/e2e/accessibility.test.ts',
    CONFORMANCE,
  ),
];

/** Clauses of EN 301 549 V3.2.1 besides clause 9, which is WCAG 2.1 at A and AA and so contained in the table. */
export const clauses: readonly { readonly clause: string; readonly how: string }[] = [
  {
    clause: '5.2 Activation of accessibility features',
    how: 'Zoom, text size, spacing, contrast and reduced motion of the system are honoured; the site brings no switches of its own that would have to be reached first.',
  },
  {
    clause: '5.4 Preservation of accessibility information during conversion',
    how: 'Printed sheets carry the letters of cores and the names of terminals. A PDF that a browser makes is only as accessible as that browser makes it.',
  },
  { clause: '5.9 Simultaneous user actions', how: 'Nothing needs two actions at once.' },
  {
    clause: '9 Web',
    how: 'As the table above: it contains all criteria of WCAG 2.1 that the clause has, and those that WCAG 2.2 adds.',
  },
  {
    clause: '11.7 User preferences',
    how: 'Colours, forced colours, reduced motion, size and spacing of text follow the system and the browser.',
  },
  {
    clause: '11.8 Authoring tools',
    how: 'The tutor’s desk makes jobs, scripts and coursework out of words and choices. What it makes is shown by the same accessible pages; each step of a stage script must have a caption.',
  },
  { clause: '12.1 Product documentation', how: 'The guides are pages of this site and meet what it meets.' },
  { clause: '12.2 Support services', how: 'Given by whoever hosts the site.' },
];
