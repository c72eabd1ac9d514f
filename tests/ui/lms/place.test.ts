import { expect, test } from 'vitest';
import { bookmarkOf, pathIn, startPath } from '../../../src/ui/lms/place.ts';

test.each([
  ['http://a.test/lessons/x/#top', 'http://a.test/', '/lessons/x/#top'],
  ['http://a.test/', 'http://a.test/', '/'],
  ['http://a.test/deep/p1/lessons/x/index.html', 'http://a.test/deep/p1/index.html', '/lessons/x/'],
  ['http://a.test/deep/p1/index.html#continue', 'http://a.test/deep/p1/', '/#continue'],
])('the path of %s under %s', (address, root, path) => {
  expect(pathIn(address, root)).toBe(path);
});

test('a page of another site, or of another folder, has no path here', () => {
  expect(pathIn('http://b.test/lessons/', 'http://a.test/')).toBeUndefined();
  expect(pathIn('http://a.test/deep/p2/lessons/', 'http://a.test/deep/p1/')).toBeUndefined();
});

test('a bookmark leaves out what the package knows, and what does not fit, its hash first', () => {
  expect(bookmarkOf('/coursework/#c=AAA&code=ANN-7&name=Ann&slot=valves/2', 255)).toBe(
    '/coursework/#slot=valves/2',
  );
  expect(bookmarkOf('/coursework/#sitting=week+ANN-7', 255)).toBe('/coursework/');
  expect(bookmarkOf('/practice/#c=1', 255)).toBe('/practice/#c=1');
  expect(bookmarkOf(`/practice/#item=${'x'.repeat(255)}`, 255)).toBe('/practice/');
  expect(bookmarkOf(`/${'x'.repeat(255)}/`, 255)).toBe('/');
});

test('a bookmark leads back, into the coursework of the package; anything else leads to the start', () => {
  const start = '/coursework/#c=AAA&code=ANN-7';
  expect(startPath('/lessons/x/#top', '/')).toBe('/lessons/x/#top');
  expect(startPath('/coursework/#slot=valves/2', start)).toBe('/coursework/#c=AAA&code=ANN-7&slot=valves/2');
  expect(startPath('/coursework/', start)).toBe(start);
  for (const odd of [
    '',
    'x',
    '//evil.test/',
    'https://evil.test/',
    '/../x/',
    '/launch/',
    'javascript:alert(1)',
    '/a\\b',
  ])
    expect(startPath(odd, start), odd).toBe(start);
});
