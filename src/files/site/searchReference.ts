import { allRules } from '../../engine/rules/index.ts';
import { capital } from '../../engine/rules/words.ts';
import type { SystemFile } from '../system.ts';
import { terminalAnchor } from '../terminal-anchor.ts';
import type { PartPage } from './parts.ts';
import type { Entry } from './searchIndex.ts';

/** Every layout, under its own name and all its nicknames. */
export const systemEntries = (systems: readonly SystemFile[]): Entry[] =>
  systems.map(({ spec, about }) => ({
    kind: 'System',
    to: `/systems/${spec.id}/`,
    title: spec.title,
    also: about?.alsoCalled.join(', ') ?? '',
    text: about ? `${about.summary} ${about.met} ${about.callsBoiler} ${about.atRest}` : '',
  }));

const fails = new Map(allRules.map((rule) => [rule.id, rule.fails]));

/** Every classic mistake as the symptom that a learner meets, at its place on the page of its system. */
export const symptomEntries = (systems: readonly SystemFile[]): Entry[] =>
  systems.flatMap(({ spec, mistakes }) =>
    mistakes.map(({ id, title, says, breaks }) => ({
      kind: 'Symptom' as const,
      to: `/systems/${spec.id}/#${id}`,
      title,
      of: spec.title,
      also: '',
      text: `${says} ${breaks.map((rule) => `${fails.get(rule)}.`).join(' ')}`.trim(),
    })),
  );

/** Every kind of part, with the colours of its flex. */
export const partEntries = (parts: readonly PartPage[]): Entry[] =>
  parts.map(({ kind, note }) => {
    const leads = kind.terminals.filter(({ duty }) => duty !== 'joint').map(({ id }) => id);
    const terminals = leads.length > 0 ? ` Terminals: ${leads.join(', ')}.` : '';
    return {
      kind: 'Part',
      to: `/parts/${kind.kind}/`,
      title: kind.title,
      also: note?.also.join(', ') ?? '',
      text: `${note?.does ?? ''}${terminals}`.trim(),
    };
  });

/** Every terminal of every kind, by its marking and the colour of its core. Ways of a strip are only numbers. */
export const terminalEntries = (parts: readonly PartPage[]): Entry[] =>
  parts.flatMap(({ kind }) =>
    kind.terminals
      .filter(({ duty }) => duty !== 'joint')
      .map(({ id, core, does }) => ({
        kind: 'Terminal' as const,
        to: `/parts/${kind.kind}/#${terminalAnchor(id)}`,
        title: `${capital(id)} on the ${kind.title.toLowerCase()}`,
        also: '',
        text: `${does} ${capital(core === 'green-yellow' ? 'green and yellow' : core)} core.`,
      })),
  );
