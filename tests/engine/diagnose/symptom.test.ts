import { describe, expect, test } from 'vitest';
import { allCandidates, type Complaint } from '../../../src/engine/diagnose/callout.ts';
import { type Candidate, candidateOf } from '../../../src/engine/diagnose/candidate.ts';
import { outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import { complaintsOf, explains, families, familyOf, sharing } from '../../../src/engine/diagnose/symptom.ts';
import { must } from '../support/must.ts';
import { call, fault, type Site, site, Visit } from './callout.ts';

/** What a candidate may show of a complaint, played as a visit: the oracle. */
function played(where: Site, candidate: Candidate, { after, settings, test: asked }: Complaint): unknown[] {
  const rest = Object.fromEntries(where.system.inputs.map(({ id, settings: [off] }) => [id, off]));
  const visit = new Visit(where, candidate, after ?? settings);
  if (after) visit.set({ ...rest, ...settings });
  return visit.world.stands.map((stand) => outcomeAt(visit.setup, stand, asked));
}

const told = (where: Site, ids: readonly string[], most?: number): Complaint[] =>
  complaintsOf(where.bench, where.wires, fault(where, ...ids), 1, most);
/** Complaints as short texts: `radiators false: heating on, room calling`. */
const short = ({ test: asked, outcome, settings }: Complaint): string =>
  `${'part' in asked ? asked.part : ''} ${outcome}: ${Object.keys(settings)
    .filter((id) => id !== 'supply')
    .sort()
    .join(', ')}`;

describe('what a customer complains of', () => {
  test.each(['three-port', 'two-two-ports', 'combi-two-zones', 'twin-immersion'])(
    'holds with the fault, and the first complaint would not hold on a healthy system: %s',
    (id) => {
      const where = site(id);
      const healthy = candidateOf(where.system, []);
      const all = allCandidates(where.system, where.wires).filter((_, k) => k % 5 === 0);
      let shown = 0;
      for (const [seed, one] of all.entries()) {
        const complaints = complaintsOf(where.bench, where.wires, one, seed);
        expect(complaints.length).toBeLessThanOrEqual(3);
        for (const complaint of complaints) {
          expect(played(where, one, complaint), one.id).toContain(complaint.outcome);
          // A customer has no tools and does not know how a valve stands.
          expect(['works', 'warms']).toContain(complaint.test.kind);
        }
        const [first] = complaints;
        if (!first) continue;
        shown++;
        expect(played(where, healthy, first), one.id).not.toContain(first.outcome);
      }
      expect(shown).toBeGreaterThan(all.length / 2);
    },
  );

  test('is nothing where nothing is wrong, or where it does not show', () => {
    const where = site('three-port');
    expect(complaintsOf(where.bench, where.wires, candidateOf(where.system, []), 1)).toEqual([]);
    // Nothing is wired to this contact on a system without an "off" line for heating.
    expect(told(where, ['programmer: heating off open'])).toEqual([]);
  });

  test('is the same for the same seed, and no more than is asked for', () => {
    const where = site('two-two-ports');
    expect(told(where, ['pump: dead'])).toEqual(told(where, ['pump: dead']));
    expect(told(where, ['pump: dead'], 1)).toHaveLength(1);
  });

  test('a three-port whose grey core is broken: heating alone is cold, and works with the hot water on', () => {
    // Source: common practice (fault table of the course).
    const complaints = told(site('three-port'), ['wire: strip/5 three-port/grey']).map(short);
    expect(complaints[0]).toBe('radiators false: heating, room');
    expect(complaints).toContain('radiators true: cylinder, heating, hot-water, room');
  });

  test('a broken spring shows only once the valve has been open', () => {
    const where = site('two-two-ports');
    const [first] = told(where, ['heating-valve: spring broken']);
    const complaint = must(first);
    expect(complaint.after).toMatchObject({ heating: 'on', room: 'calling' });
    const { after: _, ...without } = complaint;
    const spring = fault(where, 'heating-valve: spring broken');
    expect(explains(where.bench, where.wires, spring, complaint)).toBe(true);
    expect(explains(where.bench, where.wires, spring, without)).toBe(false);
  });
});

describe('the family of a complaint', () => {
  // Source of each: common practice (fault table of the course).
  test.each([
    ['three-port', 'spur: fuse blown', 'nothing-works'],
    ['three-port', 'boiler: does not fire', 'no-heat-at-all'],
    ['three-port', 'cyl-stat: call open', 'no-hot-water'],
    ['three-port', 'room-stat: call open', 'no-heating'],
    ['three-port', 'room-stat: welded calling', 'heat-not-asked-for'],
    ['two-two-ports', 'heating-valve: end switch welded', 'noise-or-waste'],
    ['two-two-ports', 'water-valve: motor dead', 'no-hot-water'],
    ['three-zones', 'first-valve: motor dead', 'one-zone-cold'],
    ['combi-one-zone', 'spur: fuse blown', 'no-heating'],
    ['twin-immersion', 'lower: element open', 'no-hot-water'],
  ] as const)('on %s, with %s, is %s', (id, what, family) => {
    const where = site(id);
    const complaints = told(where, [what]);
    expect(familyOf({ system: where.system, complaints })).toBe(family);
    expect(families[family]).toMatch(/^[A-Z]/);
  });
});

describe('candidates that share a symptom', () => {
  test.each(['three-port', 'overrun-two-two-ports'])(
    'are exactly those that explain every complaint: %s',
    (id) => {
      const where = site(id);
      const { bench, system, wires } = where;
      const all = allCandidates(system, wires);
      for (const [seed, one] of all.filter((_, k) => k % 97 === 11).entries()) {
        const complaints = complaintsOf(bench, wires, one, seed);
        const shared = sharing(bench, all, { wires, complaints, found: call.water });
        const oracle = all.filter((other) =>
          complaints.every((complaint) => played(where, other, complaint).includes(complaint.outcome)),
        );
        expect(shared.map(({ candidate }) => candidate.id)).toEqual(oracle.map((other) => other.id));
        expect(oracle).toContain(one);
      }
    },
  );

  test('stand as they do on arrival', () => {
    const where = site('three-port');
    const one = fault(where, 'room-stat: call open');
    const complaints = told(where, ['room-stat: call open']);
    const found = { supply: 'on', ...call.water };
    const [world] = sharing(where.bench, [one], { wires: where.wires, complaints, found });
    const visit = new Visit(where, one, found);
    expect(must(world).stands.map(({ standing }) => standing)).toEqual(
      visit.world.stands.map(({ standing }) => standing),
    );
  });
});
