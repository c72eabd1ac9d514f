import { figure } from '../model/figure.ts';
import { allAmps } from './currents.ts';
import type { WiringRule } from './rule.ts';
import { capital, list } from './words.ts';

export const contactRating: WiringRule = {
  id: 'contact-rating',
  title: 'No contact carries more than its rating',
  fails: 'A contact carries too much current',
  severity: 'fault',
  source: 'makers’ ratings (common practice: end switches 2 to 3 A); currents from the loads’ own figures',
  function: 'A small switch carries a load that is too big for it: it burns or welds shut.',
  compare:
    'Compare the loads fed through this contact with its rating. A relay, or the boiler’s pump terminal, can take the big one.',
  find: ({ system, line, amps: reach }) => {
    const most = allAmps(system);
    const rated = system.contacts
      .map((contact, c) => ({ contact, c }))
      .filter(({ contact }) => (contact.spec.amps ?? most) < most);
    if (rated.length === 0) return undefined;
    const over = rated.flatMap(({ contact, c }) => {
      // The side away from the supply is fed; where neither is on it, the one with less behind it.
      const fed = [contact.a, contact.b].filter((node) => !line[node]);
      // Both on it: the contact is bypassed, and what it carries is its loads' own business.
      const amps = fed.length === 0 ? 0 : Math.min(...fed.map((node) => reach(node, c)));
      return amps > contact.spec.amps! ? [{ contact, amps }] : [];
    });
    if (over.length === 0) return undefined;
    // Contacts with the same figures are named together.
    const alike = new Map<string, string[]>();
    for (const { contact, amps } of over) {
      const { part, spec } = contact;
      const figures = `carry ${figure(amps, 1)} A, made for ${figure(spec.amps!, 1)} A`;
      const name = `the ${spec.id} of the ${system.parts[part]!.name.toLowerCase()}`;
      alike.set(figures, [...(alike.get(figures) ?? []), name]);
    }
    const says = [...alike].map(
      ([figures, names]) => `${capital(list(names))} may ${names.length > 1 ? 'each ' : ''}${figures}.`,
    );
    return {
      says: says.join(' '),
      terminals: over.flatMap(({ contact: { a, b } }) =>
        [a, b].filter((node) => node < system.terminals).map((node) => system.nodes[node]!),
      ),
    };
  },
};
