import { describe, expect, it } from 'vitest';
import { href } from '../../src/ui/shell/href.ts';
import { packageOfModule } from '../../tools/package/shipped.ts';

describe('addresses in a package', () => {
  it.each([
    ['/', './', './index.html'],
    ['/lessons/', '../', '../lessons/index.html'],
    [
      '/practice/#item=live-terminals/three-port/4711/2',
      '../',
      '../practice/index.html#item=live-terminals/three-port/4711/2',
    ],
    ['/search/?q=a/b', 'http://x/deep/', 'http://x/deep/search/index.html?q=a/b'],
    ['/#continue', 'http://x/deep/', 'http://x/deep/index.html#continue'],
    ['/course/outline.json', 'http://x/deep/', 'http://x/deep/course/outline.json'],
  ])('name the file of %s below %s', (path, base, address) => {
    expect(href(path, base, true)).toBe(address);
  });

  it('stay as they are elsewhere', () => {
    expect(href('/lessons/', '/college')).toBe('/college/lessons/');
  });
});

describe('the package of a module', () => {
  it.each([
    ['/p/node_modules/svelte/src/internal/client/index.js', 'svelte'],
    ['/p/node_modules/@astrojs/svelte/dist/client.svelte.js', '@astrojs/svelte'],
    ['/p/node_modules/a/node_modules/b/index.js?v=1', 'b'],
    ['\0vite/preload-helper.js', undefined],
    ['/p/src/ui/shell/page.ts', undefined],
  ])('%s is of %s', (id, name) => {
    expect(packageOfModule(id)).toBe(name);
  });
});
