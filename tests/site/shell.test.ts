import { describe, expect, it } from 'vitest';
import { href } from '../../src/ui/shell/href.ts';
import { next } from '../../src/ui/shell/theme.ts';
import { unbroken } from '../../src/ui/shell/unbroken.ts';

describe('the shell', () => {
  it.each([
    ['/', '/lessons/', '/lessons/'],
    ['/college', '/lessons/', '/college/lessons/'],
    ['/college/', '/', '/college/'],
    ['/a/b', '/glossary/#coil', '/a/b/glossary/#coil'],
  ])('at %s gives %s the address %s', (base, path, address) => {
    expect(href(path, base)).toBe(address);
  });

  it('goes round the three themes and comes back to where it began', () => {
    expect([next('auto'), next('light'), next('dark')]).toEqual(['light', 'dark', 'auto']);
  });

  it('keeps compound words of a title on one line and leaves dashes alone', () => {
    expect(unbroken('Three-port – two-port-valve')).toBe('Three\u2011port – two\u2011port\u2011valve');
  });
});
