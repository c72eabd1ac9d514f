import { describe, expect, it } from 'vitest';
import { PACKAGES, readRequest, UsageError } from '../../tools/package/request.ts';

describe('what is asked of the packager', () => {
  it('is one kind, or all', () => {
    expect(readRequest(['scorm-1.2']).kinds).toEqual(['scorm-1.2']);
    expect(readRequest(['all']).kinds).toEqual(PACKAGES);
  });

  it('has options, and what is told without them', () => {
    expect(readRequest(['qti'])).toMatchObject({ out: 'packages', seed: 1, count: 1, passMark: undefined });
    const args = [
      'cmi5',
      '--coursework',
      'a.yaml',
      '--out',
      'o',
      '--pass-mark',
      '80',
      '--seed',
      '4294967295',
    ];
    expect(readRequest(args)).toMatchObject({
      coursework: 'a.yaml',
      out: 'o',
      passMark: 0.8,
      seed: 4_294_967_295,
    });
  });

  it.each([
    [[], 'Which package?'],
    [['scorm'], 'expected one of scorm-1.2, scorm-2004, cmi5, qti or all, found “scorm”'],
    [['cmi5', 'qti'], 'expected one kind of package, found also “qti”'],
    [['cmi5', '--pass-mark', '0'], '--pass-mark: expected a whole number from 1 to 100, found “0”'],
    [['qti', '--count', '1e1'], '--count: expected a whole number from 1 to 50, found “1e1”'],
    [['qti', '--colour', 'red'], '--colour'],
  ])('refuses %j in words', (args, says) => {
    expect(() => readRequest(args)).toThrow(UsageError);
    expect(() => readRequest(args)).toThrow(says);
  });
});
