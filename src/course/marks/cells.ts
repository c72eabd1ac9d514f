import type { Book, Entry } from './book.ts';
import { flagTitles } from './flag.ts';
import type { Labels } from './labels.ts';

/** A table for a spreadsheet: text and numbers. */
export type Cells = readonly (readonly (string | number)[])[];

/** A slot in a table: 1 right, 0 tried and not right, empty not tried. */
const markOf = ({ outcome }: Entry, slot: string): number | '' => {
  const state = outcome.states.get(slot) ?? 'open';
  return state === 'right' ? 1 : state === 'open' ? '' : 0;
};

const heading = (id: string, labels: Labels): string => {
  const label = labels.get(id);
  return label === undefined ? id : `${id} ${label}`;
};

const yesNo = (is: boolean): string => (is ? 'yes' : 'no');

/** A row for each learner, with a heading. */
export function learnerCells({ entries, slots }: Book, labels: Labels): Cells {
  const tasks = entries[0]?.outcome.tasks ?? [];
  const head = [
    'Code',
    'Name',
    'Right',
    'Of',
    'Passed',
    ...tasks.map(({ task }) => `${task.id} passed`),
    ...slots.map(({ id }) => heading(id, labels)),
    'Rules broken',
    'Worth a look',
    'Files',
  ];
  const rows = entries.map((entry) => {
    const { code, names, outcome, turns, flags, files } = entry;
    return [
      code,
      names.join(' / '),
      outcome.right,
      outcome.of,
      yesNo(outcome.passed),
      ...outcome.tasks.map(({ passed }) => yesNo(passed)),
      ...slots.map(({ id }) => markOf(entry, id)),
      [...new Set(turns.flatMap(({ marked }) => marked.rules))].join(' '),
      flags
        .filter(({ weight }) => weight !== 'weak')
        .map(({ kind, slot }) => (slot ? `${flagTitles[kind]} (${slot})` : flagTitles[kind]))
        .join('; '),
      files.join('; '),
    ];
  });
  return [head, ...rows];
}

/**
 * A row for each go, with a heading.
 * @param stamp a time (milliseconds since 1970) as spreadsheets read it, universal time
 */
export function goCells({ entries }: Book, stamp: (at: number) => string): Cells {
  const head = [
    'Code',
    'Name',
    'Slot',
    'Go',
    'When (UTC)',
    'Seconds',
    'Helps',
    'Right',
    'Counts',
    'Told right',
    'Made for',
    'Rules broken',
    'Notes',
    'File',
  ];
  const rows = entries.flatMap(({ code, names, turns }) =>
    turns.map(({ slot, turn, at, took, hints, marked, counts, told, whose, file }) => [
      code,
      names.join(' / '),
      slot,
      turn,
      stamp(at),
      Math.round(took / 100) / 10,
      hints,
      yesNo(marked.right),
      yesNo(counts),
      yesNo(told),
      marked.made === 'for another' ? (whose ?? 'another') : marked.made === 'unknown' ? 'unknown' : code,
      marked.rules.join(' '),
      marked.notes.join(' '),
      file,
    ]),
  );
  return [head, ...rows];
}
