import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { BASE, relative } from '../../tools/package/relative.ts';

const sha = (text: string) => `sha256-${createHash('sha256').update(text).digest('base64')}`;

describe('a page', () => {
  it.each([
    ['index.html', './'],
    ['lessons/index.html', '../'],
    ['bench/s-plan/references/index.html', '../../../'],
  ])('%s counts every address from its own folder', (file, root) => {
    const page = `<link href="${BASE}_astro/a.css"><a href="${BASE}#top">up</a><x-y props="{&quot;at&quot;:&quot;${BASE}x.json&quot;}">`;
    expect(relative(page, file)).toBe(
      `<link href="${root}_astro/a.css"><a href="${root}#top">up</a><x-y props="{&quot;at&quot;:&quot;${root}x.json&quot;}">`,
    );
  });

  it('keeps the policy true to a script whose text has changed', () => {
    const before = `go("${BASE}jobs/index.html")`;
    const after = 'go("../jobs/index.html")';
    const page = `<meta content="script-src '${sha(before)}' '${sha('other')}'"><script>${before}</script><script>other</script>`;
    expect(relative(page, 'a/index.html')).toBe(
      `<meta content="script-src '${sha(after)}' '${sha('other')}'"><script>${after}</script><script>other</script>`,
    );
  });

  it('leaves a page without such addresses as it is', () => {
    expect(relative('<a href="#main">skip</a>', 'a/index.html')).toBe('<a href="#main">skip</a>');
  });
});

describe('a style', () => {
  it('counts from its own folder', () => {
    expect(relative(`url(${BASE}_astro/f.woff2)`, '_astro/page.css')).toBe('url(../_astro/f.woff2)');
  });
});

describe('a script', () => {
  /** What an expression of the script comes to when the script is served from an odd place. */
  const run = (expression: string, file: string) => {
    const script = relative(expression, file).replaceAll(
      'import.meta.url',
      JSON.stringify(`http://x/deep/er/${file}`),
    );
    return String(new Function(`return ${script}`)());
  };

  it.each(['`', '"', "'"])('tells the root of the site in %s quotes', (quote) => {
    expect(run(`${quote}${BASE}${quote}`, '_astro/href.js')).toBe('http://x/deep/er/');
  });

  it('tells an address from where it is itself', () => {
    expect(run(`"${BASE}course/outline.json"`, '_astro/a.js')).toBe('http://x/deep/er/course/outline.json');
  });

  it('tells a worker beside it', () => {
    expect(run(`new URL(\`${BASE}_astro/w.js\`,""+import.meta.url)`, '_astro/a.js')).toBe(
      'http://x/deep/er/_astro/w.js',
    );
  });

  it('tells it right after a word, as packed code has it', () => {
    expect(run(`(function(e){return\`${BASE}\`+e})("a.css")`, '_astro/a.js')).toBe('http://x/deep/er/a.css');
  });

  it('tells what to fetch early, joined on', () => {
    expect(run(`\`${BASE}\`+"_astro/b.js"`, '_astro/a.js')).toBe('http://x/deep/er/_astro/b.js');
  });
});

describe('what cannot be made relative', () => {
  it('is refused, with the file and the place', () => {
    expect(() => relative(`{"at":"${BASE}x"}`, 'data/list.json')).toThrow(/^data\/list\.json: .*"at":/);
    expect(() => relative(`"see ${BASE}x"`, '_astro/a.js')).toThrow(/^_astro\/a\.js: /);
  });
});
