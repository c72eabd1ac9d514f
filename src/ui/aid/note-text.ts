import type { System } from '../../engine/model/system.ts';
import type { Note } from './note.ts';
import type { Remains } from './report.ts';
import { faults, sayFind, saySettings } from './say.ts';
import { whoIs } from './who.ts';

/** Places named in a note that is handed on; what more there is, is counted. */
const MOST_PLACES = 8;

/** The visit as plain text, for a message to the engineer or a job sheet. */
export function noteText(system: System, wiring: string, note: Note, remains: Remains | undefined): string {
  const found = note.moments
    .filter(({ finds }) => finds.length > 0)
    .flatMap(({ settings, finds }, k) => [
      `${k + 1}. With ${saySettings(system, settings)}:`,
      ...finds.map((find) => `   - ${sayFind(system, find)}`),
    ]);
  const shown = remains?.places.slice(0, MOST_PLACES) ?? [];
  const more = (remains?.places.length ?? 0) - shown.length;
  const places =
    !remains || found.length === 0
      ? []
      : [
          '',
          remains.left === 0
            ? 'No single fault explains all of it.'
            : `${faults(remains.left)} would explain it. Where to look:`,
          ...shown.map(({ name, suspects }) =>
            suspects.length <= 3
              ? `- ${name}: ${suspects.map(({ says }) => says).join('; ')}`
              : `- ${name}: ${suspects.length} ways`,
          ),
          ...(more > 0 ? [`- and ${more} more`] : []),
        ];
  return [
    `System: ${system.spec.title}`,
    `Drawing: ${wiring}`,
    `Entered by: ${whoIs(note.who).says}`,
    '',
    ...(found.length > 0 ? found : ['Nothing entered yet.']),
    ...places,
    '',
    'From a learning aid. It proves nothing: measure, and go by the makers’ instructions.',
  ].join('\n');
}
