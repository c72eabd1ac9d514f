import { describe, expect, it } from 'vitest';
import { checkCourse } from '../../src/cli/course-check.ts';
import { loadOutline, loadShelf } from '../../src/files/site/course.ts';
import { type Lesson, loadFacts, loadLessons } from '../../src/files/site/lessons.ts';

const shelf = loadShelf();
const outline = loadOutline();
const facts = loadFacts();
const sound = loadLessons().find(({ slug }) => slug === 'the-cut-out');
if (!sound) throw new Error('no lesson on the cut-out');

/** What the check says of one lesson. */
const says = (lesson: Lesson, rest = outline) =>
  checkCourse({ outline: { ...rest, routes: rest.routes.slice(0, 0) }, lessons: [lesson], facts, shelf }).map(
    ({ message }) => message,
  );

describe('the check of lessons', () => {
  it('has nothing against a sound one', () => {
    expect(says(sound)).toEqual([]);
  });

  it('names a claim that the engine does not bear out, and what is so instead', () => {
    const claims = sound.claims.map((claim, k) => (k === 0 ? { ...claim, then: { fires: false } } : claim));
    const [first, ...others] = says({ ...sound, claims });
    expect(first).toMatch(/the-cut-out\.mdx: claims\[0\]: expected .* the boiler fires: true/);
    expect(others).toEqual([]);
  });

  it('names a claim whose words do not stand in the text', () => {
    const claims = sound.claims.map((claim, k) =>
      k === 1 ? { ...claim, says: 'nobody wrote this' } : claim,
    );
    expect(says({ ...sound, claims }).join()).toMatch(
      /claims\[1\]\.says: expected words that stand in the text/,
    );
  });

  it('names a name that the layout does not have, with those that it has', () => {
    const claims = sound.claims.map((claim, k) => (k === 0 ? { ...claim, wiring: 'no-such-wiring' } : claim));
    expect(says({ ...sound, claims }).join()).toMatch(/claims\[0\].*wiring of the layout \(/);
  });

  it('names an objective that nothing asks for, a fact that is not there and a task that makes nothing', () => {
    const [objective] = sound.objectives;
    if (!objective) throw new Error('no objective');
    const tasks = [{ make: 'place-lead', layouts: ['three-port'], only: ['cut-out'] }];
    const lesson = {
      ...sound,
      objectives: [{ ...objective, id: 'unasked', tasks }],
      facts: ['no-such-fact'],
    };
    const said = says(lesson).join('\n');
    expect(said).toMatch(/objectives\[0\]: expected <Check objective="unasked" \/> in the text/);
    expect(said).toMatch(/objectives\[0\]\.tasks\[0\]: expected a task that makes items/);
    expect(said).toMatch(/facts\[0\]: expected one of/);
  });

  it('names a route that leads to a lesson that is not there', () => {
    const routes = [{ id: 'a', title: 'A', says: 'a', lessons: ['nowhere'] }];
    const said = checkCourse({ outline: { ...outline, routes }, lessons: [sound], facts, shelf });
    expect(said.map(({ message }) => message).join()).toMatch(
      /content\/routes\.yaml: .*lessons\[0\]: expected one of/,
    );
  });
});
