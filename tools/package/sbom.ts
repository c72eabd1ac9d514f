import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadLicences } from '../../src/files/site/licences.ts';

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}
type Packages = Readonly<Record<string, Locked>>;

const nameOf = (path: string): string => path.split('node_modules/').at(-1) ?? '';

/** Package URL of a package of the npm kind: a scope's sign is encoded (package-url specification, npm type). */
const purlOf = (name: string, version: string): string => `pkg:npm/${name.replace('@', '%40')}@${version}`;

/** Licences as CycloneDX has them: one identifier, several joined, or a name that is no identifier. */
function licencesOf(stated: string) {
  if (stated === '') return [];
  if (/[ ()]/.test(stated)) return [{ expression: stated.replace(/^\((.*)\)$/, '$1') }];
  return [{ license: stated === 'BSD' ? { name: stated } : { id: stated } }];
}

/** `sha512-…` as the lock file has it, in base64, as CycloneDX has it: in hexadecimal. */
function hashesOf(integrity: string | undefined) {
  const [, size, text] = /^sha(1|256|384|512)-([\w+/=]+)$/.exec(integrity ?? '') ?? [];
  if (!size || !text) return {};
  return { hashes: [{ alg: `SHA-${size}`, content: Buffer.from(text, 'base64').toString('hex') }] };
}

/** Where a package finds another one that it asks for: the nearest folder upwards. */
function pathOf(packages: Packages, from: string, name: string): string | undefined {
  const parts = from === '' ? [] : from.split('/node_modules/');
  for (let k = parts.length; k >= 0; k--) {
    const above = parts.slice(0, k).join('/node_modules/');
    const path = above === '' ? `node_modules/${name}` : `${above}/node_modules/${name}`;
    if (packages[path]) return path;
  }
  return undefined;
}

const sorted = (list: Iterable<string>): string[] => [...new Set(list)].sort();

/**
 * The software bill of materials (CycloneDX 1.6, ECMA-424): every package that `npm ci --omit=dev` installs, out of the
 * lock file. The same lock file always gives the same text: it has no date, no serial number and no address of a registry.
 * @param root the project's folder, with its packages installed
 */
export function sbomOf(root: string): string {
  const read = <T>(name: string): T => JSON.parse(readFileSync(join(root, name), 'utf8')) as T;
  const { packages } = read<{ packages: Packages }>('package-lock.json');
  const { name, version, description } = read<{ name: string; version: string; description: string }>(
    'package.json',
  );
  const licences = new Map(loadLicences(root).map((one) => [`${one.name}@${one.version}`, one]));
  const inUse = Object.entries(packages).filter(
    ([path, locked]) => path !== '' && locked.version !== undefined && !locked.dev && !locked.devOptional,
  );
  const refOf = (path: string): string => purlOf(nameOf(path), packages[path]?.version ?? '');
  const asked = (path: string): string[] => {
    const { dependencies, optionalDependencies, peerDependencies } = packages[path] ?? {};
    const names = Object.keys({ ...dependencies, ...optionalDependencies, ...peerDependencies });
    return sorted(
      names.flatMap((one) => {
        const found = pathOf(packages, path, one);
        return found && !packages[found]?.dev && !packages[found]?.devOptional ? [refOf(found)] : [];
      }),
    );
  };
  const ownRef = purlOf(name, version);
  // A package may stand in several folders in one version: it is one component.
  const components = new Map(
    inUse.map(([path, { integrity, optional, version: has = '' }]) => {
      const licence = licences.get(`${nameOf(path)}@${has}`);
      const component = {
        type: 'library',
        'bom-ref': refOf(path),
        name: nameOf(path),
        version: has,
        scope: optional ? 'optional' : 'required',
        ...hashesOf(integrity),
        licenses: licencesOf(licence?.licence ?? ''),
        purl: refOf(path),
        properties: [{ name: 'switched-live:in-the-site', value: String(licence?.shipped === true) }],
      };
      return [refOf(path), component] as const;
    }),
  );
  const dependsOn = new Map<string, string[]>([[ownRef, asked('')]]);
  for (const [path] of inUse)
    dependsOn.set(refOf(path), sorted([...(dependsOn.get(refOf(path)) ?? []), ...asked(path)]));
  const bom = {
    $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: {
      component: { type: 'application', 'bom-ref': ownRef, name, version, description, purl: ownRef },
    },
    components: sorted(components.keys()).map((ref) => components.get(ref)),
    dependencies: sorted(dependsOn.keys()).map((ref) => ({ ref, dependsOn: dependsOn.get(ref) })),
  };
  return `${JSON.stringify(bom, null, 2)}\n`;
}
