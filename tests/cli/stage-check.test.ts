import { describe, expect, it } from 'vitest';
import { checkStages } from '../../src/cli/stage-check.ts';
import { loadShelf } from '../../src/files/site/course.ts';
import { filesIn } from '../../src/files/site/folder.ts';
import { STAGES } from '../../src/files/site/stage.ts';

const { layout, layoutIds } = loadShelf();
const own = filesIn(STAGES, '.yaml').map(({ name, text }) => ({ name: `${STAGES}/${name}`, text }));
const says = (files: { name: string; text: string }[]) =>
  checkStages({ files, layout, layoutIds }).map(({ message }) => message);

describe('the check of stage scripts', () => {
  it('has nothing against our own', () => {
    expect(own.length).toBeGreaterThan(3);
    expect(says(own)).toEqual([]);
  });

  it.each(own)('would see it when a claim of $name were the other way round', ({ name, text }) => {
    const flips = [...text.matchAll(/(fires|pumps): (true|false)/g)];
    expect(flips.length).toBeGreaterThan(2);
    for (const { 0: claim, 1: what, 2: value, index } of flips) {
      const other = `${what}: ${value === 'true' ? 'false' : 'true'}`;
      const wrong = text.slice(0, index) + other + text.slice(index + claim.length);
      expect(says([{ name, text: wrong }])).toEqual([
        expect.stringContaining('expected what holds in this state'),
      ]);
    }
  });

  it('names a system that is not there, with those that are', () => {
    const text = 'title: A\nsystem: three-prot\nsteps: [{ says: One. }]\n';
    expect(says([{ name: 'content/stage/a.yaml', text }])).toEqual([
      expect.stringMatching(/a\.yaml: system: expected .*three-port.*found "three-prot"/),
    ]);
  });

  it('names a title that is there twice, and goes on to the other files', () => {
    const text = 'title: A\nsystem: three-port\nsteps: [{ says: One. }]\n';
    const files = ['a', 'b', 'c'].map((id) => ({ name: `content/stage/${id}.yaml`, text }));
    files[2] = { name: 'content/stage/c.yaml', text: 'steps: 3' };
    const found = says(files);
    expect(found).toHaveLength(2);
    expect(found[0]).toMatch(/b\.yaml: title: .*that of content\/stage\/a\.yaml/);
    expect(found[1]).toMatch(/c\.yaml/);
  });
});
