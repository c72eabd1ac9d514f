import type { About } from '../../files/about-schema.ts';

/** Whether a layout suits an unvented cylinder, in a word or two. */
export const suitsWords: Record<About['unvented']['suits'], string> = {
  yes: 'Yes',
  'with-additions': 'With additions',
  no: 'No',
};
