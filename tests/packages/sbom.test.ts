import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLicences } from '../../src/files/site/licences.ts';
import { SHIPPED } from '../../src/files/site/packageUses.ts';
import { licenceText } from '../../tools/package/licence-text.ts';
import { sbomOf } from '../../tools/package/sbom.ts';

interface Component {
  readonly type: string;
  readonly 'bom-ref': string;
  readonly name: string;
  readonly version: string;
  readonly purl: string;
  readonly hashes?: readonly { readonly alg: string; readonly content: string }[];
  readonly licenses: readonly { readonly license?: { readonly id?: string }; readonly expression?: string }[];
}
interface Bom {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly version: number;
  readonly serialNumber?: string;
  readonly metadata: { readonly timestamp?: string; readonly component: Component };
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}
interface Lock {
  readonly packages: Readonly<Record<string, { version?: string; dev?: boolean; devOptional?: boolean }>>;
}

const root = process.cwd();
const text = sbomOf(root);
const bom = JSON.parse(text) as Bom;
const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as Lock;

describe('the software bill of materials', () => {
  it('lists every package that is installed without those for development, with its version and licence', () => {
    const listed = new Map(bom.components.map((one) => [`${one.name}@${one.version}`, one]));
    for (const [path, { version, dev, devOptional }] of Object.entries(packages)) {
      if (path === '' || dev || devOptional) continue;
      const one = listed.get(`${path.split('node_modules/').at(-1)}@${version}`);
      const [licence] = one?.licenses ?? [];
      expect(licence?.license?.id ?? licence?.expression, path).toMatch(/^[A-Z0-9]/);
    }
    expect(bom.components.some(({ name }) => name === 'vitest')).toBe(false);
  });

  // An outside check: npm's own bill of the same lock file. (It leaves out what only other machines would install.)
  it('has all that npm has', () => {
    const theirs = JSON.parse(
      execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only', '--omit', 'dev'], {
        cwd: root,
        maxBuffer: 50_000_000,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'ignore'],
      }),
    ) as Bom;
    const ours = new Map(bom.components.map((one) => [one.purl, one]));
    expect(theirs.components.length).toBeGreaterThan(100);
    for (const { purl, hashes } of theirs.components) {
      expect(ours.has(purl), purl).toBe(true);
      const sha512 = hashes?.find(({ alg }) => alg === 'SHA-512')?.content;
      if (sha512) expect(ours.get(purl)?.hashes).toEqual([{ alg: 'SHA-512', content: sha512 }]);
    }
  });

  // ECMA-424 (CycloneDX 1.6), JSON schema bom-1.6: the properties that it requires and the forms that it asks for.
  it('is of CycloneDX 1.6', () => {
    expect(bom).toMatchObject({ bomFormat: 'CycloneDX', specVersion: '1.6', version: 1 });
    const refs = [bom.metadata.component, ...bom.components].map((one) => one['bom-ref']);
    expect(new Set(refs).size).toBe(refs.length);
    for (const { type, name, purl, hashes = [], licenses } of bom.components) {
      expect(type).toBe('library');
      expect(name).not.toBe('');
      expect(purl).toMatch(/^pkg:npm\/(?:%40[\w.-]+\/)?[\w.-]+@\d/);
      for (const { alg, content } of hashes) {
        expect(['SHA-1', 'SHA-256', 'SHA-384', 'SHA-512']).toContain(alg);
        expect(content).toMatch(/^(?:[a-f0-9]{40}|[a-f0-9]{64}|[a-f0-9]{96}|[a-f0-9]{128})$/);
      }
      // Either identifiers, or one expression.
      expect(licenses.filter(({ expression }) => expression).length === 0 || licenses.length === 1).toBe(
        true,
      );
    }
    for (const { ref, dependsOn } of bom.dependencies) {
      expect(refs).toContain(ref);
      expect(refs).toEqual(expect.arrayContaining([...dependsOn]));
      expect(new Set(dependsOn).size).toBe(dependsOn.length);
    }
  });

  it('says nothing that changes from one making to the next, and names no registry', () => {
    expect(sbomOf(root)).toBe(text);
    expect(bom.serialNumber ?? bom.metadata.timestamp).toBeUndefined();
    expect(text.match(/https?:\/\/[^"]*/g)).toEqual(['http://cyclonedx.org/schema/bom-1.6.schema.json']);
  });

  it('tells who needs whom', () => {
    const needs = new Map(
      bom.dependencies.map(({ ref, dependsOn }) => [ref.replace(/@[\d.]+$/, ''), dependsOn]),
    );
    expect(needs.get('pkg:npm/d3-shape')?.[0]).toMatch(/^pkg:npm\/d3-path@/);
    expect(needs.get('pkg:npm/switched-live')?.some((ref) => ref.startsWith('pkg:npm/svelte@'))).toBe(true);
  });
});

describe('licences', () => {
  const all = loadLicences(root);

  it('are there in full for everything that is shipped', () => {
    const shipped = all.filter((one) => one.shipped);
    expect(shipped.map(({ name }) => name).sort()).toEqual([...SHIPPED.keys()].sort());
    for (const { name, licence, text: words } of shipped) {
      expect(licence, name).toMatch(/^(?:MIT|ISC|OFL-1\.1|0BSD|BSD-[23]-Clause|Apache-2\.0)$/);
      expect(words.length, name).toBeGreaterThan(400);
      expect(licenceText(all)).toContain(words);
    }
  });

  it('say what each package is for that this project asks for', () => {
    expect(all.filter((one) => one.direct && one.for === '').map(({ name }) => name)).toEqual([]);
  });
});
