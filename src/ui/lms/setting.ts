import type { Coursework } from '../../course/coursework/coursework.ts';

/** The standards by which a learning platform can be told what a learner did. */
export const STANDARDS = ['scorm-1.2', 'scorm-2004', 'cmi5'] as const;
export type Standard = (typeof STANDARDS)[number];

/** What a package is for: the whole course, or one coursework. */
export type PackedWork =
  | { readonly kind: 'course'; readonly title: string }
  | { readonly kind: 'coursework'; readonly coursework: Coursework };

/**
 * What a package says of itself, in `launch/setting.json`. The site outside of packages has `{"standard": "none"}` there.
 */
export interface Setting {
  readonly standard: Standard;
  readonly work: PackedWork;
}

/** The address of the file, from the site's root. */
export const SETTING_PATH = '/launch/setting.json';

/** The text of the file in a package. */
export const writeSetting = (setting: Setting): string => `${JSON.stringify(setting)}\n`;

const isObject = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

/**
 * What the file says; undefined outside of packages. The packager has checked the coursework: here only its outline is.
 * @throws RangeError that names what does not fit
 */
export function readSetting(data: unknown): Setting | undefined {
  if (!isObject(data)) throw new RangeError('expected an object');
  if (data.standard === 'none') return undefined;
  const standard = STANDARDS.find((one) => one === data.standard);
  if (!standard) throw new RangeError(`standard: expected one of ${STANDARDS.join(', ')}`);
  const { work } = data;
  if (!isObject(work)) throw new RangeError('work: expected an object');
  if (work.kind === 'course' && typeof work.title === 'string')
    return { standard, work: { kind: 'course', title: work.title } };
  const given = work.coursework;
  if (
    work.kind === 'coursework' &&
    isObject(given) &&
    typeof given.id === 'string' &&
    Array.isArray(given.tasks)
  )
    return { standard, work: { kind: 'coursework', coursework: given as unknown as Coursework } };
  throw new RangeError('work: expected a course with its title, or a coursework');
}
