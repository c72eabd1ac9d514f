import type { Coursework } from '../../../src/course/coursework/coursework.ts';
import type { Files } from '../../../tools/package/pack.ts';

const bytes = (text: string): Uint8Array => Buffer.from(text);

/** A site of a few files, as it would be built for packages, with names that need care in addresses and in XML. */
export const tinySite: Files = new Map([
  ['index.html', bytes('<a href="./lessons/index.html">Course</a>')],
  ['lessons/index.html', bytes('<p>Lessons</p>')],
  ['_astro/a&b c.js', bytes('export {};')],
  ['launch/index.html', bytes('<p>Launch</p>')],
  ['launch/cmi5/index.html', bytes('<p>Launch</p>')],
  ['launch/setting.json', bytes('{"standard":"none"}')],
]);

export const course = { kind: 'course', title: 'Switched Live' } as const;

/** A coursework whose words would break XML, were they not escaped. */
export const coursework: Coursework = {
  id: 'valves-and-more',
  title: 'Valves & “more” <two & three-port>',
  says: 'Read it first:\n\t"live" & dead ]]> \u0007',
  variants: 'own',
  seed: 7,
  tasks: [{ kind: 'job', id: 'wire', job: 'unvented-three-port', attempts: 3, hints: 1 }],
};
