import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import { dealJob, dealQuestion, dealVisit, visitAddress } from '../../../src/course/coursework/deal.ts';
import { gradeWork } from '../../../src/course/coursework/grade.ts';
import { MOST_FOLLOWED } from '../../../src/course/coursework/grade-visit.ts';
import { type Slot, slotsOf } from '../../../src/course/coursework/slots.ts';
import type { Work } from '../../../src/course/coursework/work.ts';
import type { Act } from '../../../src/engine/diagnose/act.ts';
import { expertRoute } from '../../../src/engine/diagnose/expert.ts';
import { judgeVisit } from '../../../src/engine/diagnose/judge.ts';
import { nearestChange } from '../../../src/engine/grade/change.ts';
import { type Wire, wireKey } from '../../../src/engine/model/wiring.ts';
import { loadGrading } from '../../../src/files/site/grading.ts';

const { source, objectivesOf } = loadGrading();
const rules = { attempts: 3, hints: 0 };
const coursework: Coursework = {
  id: 'class',
  title: 'Class',
  variants: 'own',
  seed: 42,
  tasks: [
    { id: 'bare', kind: 'job', job: 'three-port', ...rules },
    { id: 'complete', kind: 'job', job: 'unvented-three-port-switching', ...rules },
    { id: 'right-it', kind: 'job', job: 'two-zones-wrong-floor', ...rules },
    { id: 'convert', kind: 'job', job: 'vented-to-unvented-three-port', ...rules },
    {
      id: 'live',
      kind: 'questions',
      title: 'Live',
      about: { make: 'live-terminals', layouts: ['three-port'] },
      level: 2,
      count: 2,
      ...rules,
    },
    { id: 'lesson', kind: 'lesson', lesson: 'follow-the-call', ...rules },
    { id: 'towels', kind: 'callout', callout: 'warm-towels-in-july', ...rules },
    { id: 'own', kind: 'fault', system: 'gravity-two-port', level: 1, ...rules },
  ],
};
const slots = slotsOf(coursework, objectivesOf);
const slotOf = <K extends Slot['kind']>(id: string) =>
  slots.find((slot) => slot.id === id) as Extract<Slot, { kind: K }>;
const base = { attempt: 1, at: 1000, took: 60_000, hints: 0, right: true };
const grade = (id: string, work: object, code = 'AMY', set = coursework) =>
  gradeWork(set, slotOf(id), { slot: id, ...base, ...work } as Work, { code }, source);

/** A right wiring made out of a learner's own start, as a good learner would. */
function doneJob(id: string, code: string): Wire[] {
  const { layout, variant } = dealJob(coursework, slotOf<'job'>(id), code, source);
  const { change } = nearestChange(
    layout.system,
    variant.given,
    layout.right.map(({ wires }) => wires),
  );
  return [...change.stays, ...change.land];
}

describe('a wiring job', () => {
  test.each(['bare/1', 'complete/1', 'right-it/1', 'convert/1'])('%s is right when it is done', (id) => {
    for (const code of ['AMY', 'BEN', 'CAT'])
      expect(grade(id, { kind: 'job', wires: doneJob(id, code) }, code)).toEqual({
        right: true,
        made: 'as dealt',
        rules: [],
        notes: [],
      });
  });

  test.each(['bare/1', 'complete/1'])(
    '%s copied from another learner is not right: its locked wires are not there',
    (id) => {
      const marked = grade(id, { kind: 'job', wires: doneJob(id, 'AMY') }, 'BEN');
      expect(marked).toMatchObject({ right: false, made: 'for another' });
      expect(marked.notes[0]).toMatch(/^\d+ of the \d+ wires that were given and stay are not there/);
    },
  );

  test.each(['right-it/1', 'convert/1'])(
    '%s copied from another learner keeps little of what was there',
    (id) => {
      const marked = grade(id, { kind: 'job', wires: doneJob(id, 'AMY') }, 'BEN');
      expect(marked.made).toBe('unknown');
      expect(marked.notes.at(-1)).toMatch(/^Only \d+ of the \d+ wires that were there are still in place\.$/);
    },
  );

  test('that is left as it was found is wrong, and the broken rules are named', () => {
    const { variant } = dealJob(coursework, slotOf<'job'>('right-it/1'), 'AMY', source);
    const marked = grade('right-it/1', { kind: 'job', wires: variant.given });
    expect(marked).toMatchObject({ right: false, made: 'as dealt' });
    expect(marked.rules.length).toBeGreaterThan(0);
    expect(marked.notes.length).toBe(marked.rules.length);
  });

  test('says which wire is odd, and does not trip over it', () => {
    const own = doneJob('bare/1', 'AMY');
    const odd = (wire: Wire) => grade('bare/1', { kind: 'job', wires: [...own, wire] }).notes;
    expect(odd(['strip/1', 'moon/1'])).toEqual(['There is no terminal moon/1 in this job.']);
    expect(odd(['strip/1', '__proto__/1'])).toEqual(['There is no terminal __proto__/1 in this job.']);
    expect(odd(['strip/1', 'strip/1'])).toEqual(['A wire begins and ends in strip/1.']);
  });

  test('with any one wire of a right wiring left out is never right when the judge says so, whatever the file claims', () => {
    const { layout } = dealJob(coursework, slotOf<'job'>('complete/1'), 'AMY', source);
    const own = doneJob('complete/1', 'AMY');
    const { judge } = source.judging(layout.id);
    for (const wire of own) {
      const wires = own.filter((other) => wireKey(other) !== wireKey(wire));
      const marked = grade('complete/1', { kind: 'job', wires, right: true });
      expect(marked.right, `without ${wireKey(wire)}`).toBe(
        marked.made === 'as dealt' && judge(wires).accepted,
      );
    }
  });
});

describe('a question', () => {
  const item = (code: string, attempt = 1) =>
    dealQuestion(coursework, slotOf<'question'>('live/1'), code, attempt, source);

  test('is right with a right answer to the variant that was dealt', () => {
    const { id, answer } = item('AMY');
    const right = { right: true, made: 'as dealt', rules: [], notes: [] };
    expect(grade('live/1', { kind: 'question', item: id, answer })).toEqual(right);
    const again = item('AMY', 2);
    expect(grade('live/1', { kind: 'question', attempt: 2, item: again.id, answer: again.answer })).toEqual(
      right,
    );
  });

  test('is wrong with a wrong answer, and the first cause is told', () => {
    const { id, judge } = item('AMY');
    const answer = { kind: 'mark', marked: [] } as const;
    const { notes } = judge(answer);
    expect(grade('live/1', { kind: 'question', item: id, answer })).toEqual({
      right: false,
      made: 'as dealt',
      rules: [],
      notes: [notes[0]?.cause],
    });
  });

  test('that another learner was dealt, or another attempt, is not right, however well it is answered', () => {
    for (const { id, answer } of [item('BEN'), item('AMY', 2)])
      expect(grade('live/1', { kind: 'question', item: id, answer })).toMatchObject({
        right: false,
        made: 'for another',
      });
    expect(grade('live/1', { kind: 'question', item: 'nonsense', answer: item('AMY').answer }).made).toBe(
      'unknown',
    );
  });

  test('of a lesson is on its objective', () => {
    const slot = slotOf<'question'>('lesson/1');
    const { id, answer } = dealQuestion(coursework, slot, 'AMY', 1, source);
    expect(grade('lesson/1', { kind: 'question', item: id, answer }).right).toBe(true);
  });

  test('answered in another form is told as such', () => {
    const { id } = item('AMY');
    expect(
      grade('live/1', { kind: 'question', item: id, answer: { kind: 'number', typed: '7' } }).notes,
    ).toEqual(['Expected an answer of kind mark, found number.']);
  });
});

describe.each(['towels/1', 'own/1'])('a visit (%s)', (id) => {
  const slot = slotOf<'callout' | 'fault'>(id);
  const posed = source.visit(dealVisit(coursework, slot, 'AMY', 1));
  const callout = visitAddress(coursework, slot, 'AMY', 1);
  const { entries } = expertRoute(posed.bench, posed.callout, posed.candidates);
  const acts = entries.flatMap(({ step }): Act[] => [...step.acts, { do: 'test', test: step.test }]);
  const said = posed.callout.fault.id;
  const visit = (given: object) => grade(id, { kind: 'visit', callout, acts, said, ...given });

  test('as a good engineer makes it is right', () => {
    expect(visit({})).toEqual({
      right: true,
      made: 'as dealt',
      rules: [],
      notes: [],
      breaches: [],
      proved: true,
    });
  });

  test('is marked as the full judge of visits marks it, wherever it is broken off', () => {
    for (let k = 0; k <= acts.length; k++) {
      const some = acts.slice(0, k);
      const full = judgeVisit(posed.bench, posed.callout, posed.candidates, some, posed.callout.fault);
      expect(visit({ acts: some })).toMatchObject({ proved: full.proved, right: full.proved && full.right });
    }
  });

  test('is marked so whatever visits to the same callout were marked before it', () => {
    const { bench, callout, candidates } = posed;
    const tests = acts.filter((act) => act.do === 'test');
    const ways = [
      [],
      acts,
      ...acts.map((_, gone) => acts.filter((__, k) => k !== gone)),
      // Another test in place of one.
      ...tests.flatMap((gone) => tests.map((other) => acts.map((act) => (act === gone ? other : act)))),
    ];
    const told = ways.flatMap((way) => {
      try {
        return [{ way, full: judgeVisit(bench, callout, candidates, way, callout.fault) }];
      } catch {
        // Without that act a later one cannot be done.
        return [];
      }
    });
    expect(new Set(told.map(({ full }) => full.proved)).size).toBe(2);
    for (const { way, full } of [...told, ...told.reverse()])
      expect(visit({ acts: way }).proved, JSON.stringify(way)).toBe(full.proved);
  });

  test('that names another fault is wrong, and both are told', () => {
    const other = posed.candidates.find(
      (one) =>
        one.id !== said && !expertRoute(posed.bench, posed.callout, posed.candidates).left.includes(one),
    );
    const marked = visit({ said: other?.id });
    expect(marked.right).toBe(false);
    expect(marked).not.toHaveProperty('proved');
    expect(marked.notes[0]).toContain(posed.callout.fault.says);
  });

  test('with a hand in something live is wrong, though the fault is found', () => {
    const { system } = posed.callout;
    const on = Object.fromEntries(
      system.supplies.flatMap(({ input }) => {
        const own = system.inputs[input];
        return own ? [[own.id, own.settings[1]]] : [];
      }),
    );
    const part = system.parts.find(({ kind }) => kind.terminals.length > 0 && !kind.supply)?.id ?? '';
    const careless: Act[] = [
      { do: 'operate', settings: on },
      { do: 'swap', part: system.parts[1]?.id ?? part },
    ];
    const marked = visit({ acts: [...careless, ...acts] });
    expect(marked.right).toBe(false);
    expect(marked.breaches).toContain('hand-in-live');
  });

  test.each([
    [
      'an act that cannot be done',
      { acts: [{ do: 'open', part: 'moon' }] },
      /^Act 1 of the visit cannot be done/,
    ],
    ['an act that there is not', { acts: [{ do: 'guess' }] }, /^Act 1 of the visit cannot be done/],
    [
      'a fault that there is not',
      { said: 'moonshine' },
      /^Nothing that may be wrong here is called moonshine/,
    ],
    ['another callout', { callout: 'callout/cold-showers' }, /which AMY was not dealt at attempt 1/],
    [
      'more acts than anybody does',
      { acts: new Array(MOST_FOLLOWED + 1).fill({ do: 'lock' }) },
      /at most 500/,
    ],
  ])('with %s is refused by name', (_, given, says) => {
    const marked = visit(given);
    expect(marked.right).toBe(false);
    expect(marked.notes[0]).toMatch(says);
  });
});

test('Work of another kind than its slot is refused, and says what was expected', () => {
  expect(grade('bare/1', { kind: 'visit', callout: 'x', acts: [], said: 'y' }).notes).toEqual([
    'Expected a wiring, found a visit.',
  ]);
  expect(grade('live/1', { kind: 'job', wires: [] }).notes).toEqual([
    'Expected an answer to a question, found a wiring.',
  ]);
});

test('What the coursework names and the site lacks is told in a note', () => {
  const tasks = [{ id: 'gone', kind: 'job', job: 'gone', ...rules }] as const;
  const [slot] = slotsOf({ ...coursework, tasks }, objectivesOf);
  const work = { slot: 'gone/1', ...base, kind: 'job', wires: [] } as const;
  expect(gradeWork({ ...coursework, tasks }, slot as Slot, work, { code: 'AMY' }, source)).toEqual({
    right: false,
    made: 'unknown',
    rules: [],
    notes: ['It cannot be graded: expected a job of the course, found "gone".'],
  });
});

test('Whatever stands in a piece of work, grading answers with a reason and throws nothing', () => {
  const anything = fc.record({
    kind: fc.constantFrom('question', 'job', 'visit', 'other'),
    attempt: fc.oneof(fc.integer(), fc.string()),
    item: fc.anything(),
    answer: fc.anything(),
    wires: fc.oneof(fc.anything(), fc.array(fc.array(fc.anything()))),
    callout: fc.anything(),
    acts: fc.oneof(fc.anything(), fc.array(fc.anything())),
    said: fc.anything(),
  });
  fc.assert(
    fc.property(fc.constantFrom(...slots.map(({ id }) => id)), anything, (id, work) => {
      const { right, notes } = grade(id, work);
      expect(right).toBe(false);
      expect(notes.length).toBeGreaterThan(0);
    }),
    { numRuns: 300 },
  );
});
