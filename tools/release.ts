/**
 * `npm run release`: writes to `release/` the site and every package as zips, the software bill of materials, the
 * licences of what is in the site, and the checksums of it all. The same sources in the same
 * folder give the same bytes; in another folder Astro gives its islands other ids.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadLicences } from '../src/files/site/licences.ts';
import { STANDARDS } from '../src/ui/lms/setting.ts';
import { builtDist, builtSite } from './package/built.ts';
import { licenceText } from './package/licence-text.ts';
import { nameOf, packageOf, readFiles } from './package/pack.ts';
import { qtiPackage } from './package/qti.ts';
import { sbomOf } from './package/sbom.ts';
import { zipOf } from './package/zip.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'release');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
const work = { kind: 'course', title: 'Switched Live' } as const;

const files = new Map<string, Uint8Array>();
const licences = Buffer.from(licenceText(loadLicences(root)));
const site = new Map(readFiles(builtDist(root)));
files.set('switched-live-site.zip', zipOf(site.set('licences.txt', licences)));
const packed = new Map(readFiles(builtSite(root))).set('licences.txt', licences);
for (const standard of STANDARDS)
  files.set(`${nameOf(work)}-${standard}.zip`, packageOf(standard, packed, { work, version }));
files.set(`${nameOf(work)}-qti.zip`, qtiPackage({ root, seed: 1, count: 1 }).zip);
files.set('sbom.cdx.json', Buffer.from(sbomOf(root)));
files.set('licences.txt', licences);

rmSync(out, { recursive: true, force: true });
mkdirSync(out);
const sums = [...files].map(([name, bytes]) => {
  writeFileSync(join(out, name), bytes);
  console.log(`release/${name}: ${(bytes.length / 1e6).toFixed(2)} MB`);
  return `${createHash('sha256').update(bytes).digest('hex')}  ${name}\n`;
});
writeFileSync(join(out, 'SHA256SUMS'), sums.sort((a, b) => (a.slice(66) < b.slice(66) ? -1 : 1)).join(''));
