import { unzipSync } from 'fflate';
import type { PackedWork, Standard } from '../../../src/ui/lms/setting.ts';
import { packageOf } from '../../../tools/package/pack.ts';
import { course, coursework, tinySite } from './site.ts';

/** The works that packages are made of in tests. */
export const works: readonly PackedWork[] = [course, { kind: 'coursework', coursework }];

/** A package of the tiny site, unpacked: what each file says. */
export function packed(standard: Standard, work: PackedWork, passMark?: number): ReadonlyMap<string, string> {
  const zip = packageOf(standard, tinySite, { work, version: '0.1.0', passMark });
  return new Map(
    Object.entries(unzipSync(zip)).map(([name, bytes]) => [name, Buffer.from(bytes).toString()]),
  );
}

/** Every address that a manifest lists, decoded as a platform decodes it. */
export const listed = (manifest: string): string[] =>
  [...manifest.matchAll(/<file href="([^"]*)"\/>/g)].map(([, href = '']) => decodeURIComponent(href));
