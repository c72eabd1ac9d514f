import { expect, it } from 'vitest';
import { parseLesson } from '../../src/files/lesson.ts';

const good = `---
title: A
summary: B
minutes: 5
objectives:
  - id: do-it
    says: do it
    tasks: [{ make: choice, quiz: bands }]
---
Text`;

it('A lesson file gives its front matter and its text', () => {
  expect(parseLesson(good, 'a.mdx')).toMatchObject({ title: 'A', body: 'Text', facts: [], claims: [] });
});

it.each([
  ['summary: B\n', '', /a\.mdx: summary: expected a summary/],
  ['title: A', 'titel: A', /a\.mdx: titel: expected "title"|titel/],
  ['minutes: 5', 'minutes: five', /a\.mdx: minutes: expected whole minutes/],
  ['make: choice, ', '', /a\.mdx: objectives\[0\]\.tasks\[0\]\.make/],
  ['    tasks: [{ make: choice, quiz: bands }]\n', '    tasks: []\n', /at least one task/],
  ['---\nText', 'Text', /front matter between two lines of ---/],
])('A lesson file with %j written as %j is refused, with the place named', (was, now, message) => {
  expect(() => parseLesson(good.replace(was, now), 'a.mdx')).toThrow(message);
});
