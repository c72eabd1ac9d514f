/** `npm run package -- scorm-1.2`: writes a package for a learning platform. Says its usage when asked wrongly. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FileError } from '../src/files/error.ts';
import { type PackedWork, STANDARDS } from '../src/ui/lms/setting.ts';
import { builtSite } from './package/built.ts';
import { loadCoursework } from './package/coursework.ts';
import { type Files, nameOf, packageOf, readFiles } from './package/pack.ts';
import { qtiPackage } from './package/qti.ts';
import { readRequest, UsageError, usage } from './package/request.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

function write(folder: string, name: string, bytes: Uint8Array): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, name), bytes);
  console.log(`${join(folder, name)}: ${(bytes.length / 1e6).toFixed(2)} MB`);
}

const listed = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([what, count]) => `${count} ${what}`)
    .join(', ') || 'nothing';

try {
  const request = readRequest(process.argv.slice(2));
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const work: PackedWork =
    request.coursework === undefined
      ? { kind: 'course', title: 'Switched Live' }
      : { kind: 'coursework', coursework: loadCoursework(request.coursework, root) };
  let site: Files | undefined;
  for (const kind of request.kinds) {
    const standard = STANDARDS.find((one) => one === kind);
    if (!standard) {
      const { seed, count } = request;
      const coursework = work.kind === 'coursework' ? work.coursework : undefined;
      const { zip, items, leftOut } = qtiPackage({ root, seed, count, coursework });
      write(request.out, `${nameOf(work)}-qti.zip`, zip);
      console.log(`Items: ${listed(items)}. Left out, for no standard interaction fits: ${listed(leftOut)}.`);
      continue;
    }
    site ??= readFiles(request.site ?? builtSite(root));
    const order = { work, version, passMark: request.passMark };
    write(request.out, `${nameOf(work)}-${standard}.zip`, packageOf(standard, site, order));
  }
} catch (error) {
  if (error instanceof UsageError) console.error(`${error.message}\n${usage}`);
  else if (error instanceof FileError) console.error(error.message);
  else throw error;
  process.exitCode = 2;
}
