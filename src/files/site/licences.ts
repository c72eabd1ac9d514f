import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SHIPPED, USES } from './packageUses.ts';

/** A package of other people's that this project uses. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** Its licence's SPDX identifier or expression, as its authors state it: `MIT`, `OFL-1.1`; empty where they do not. */
  readonly licence: string;
  /** The whole text of its licence; empty for what is only used in making. */
  readonly text: string;
  /** What it does here; empty for packages that came along with others. */
  readonly for: string;
  /** Whether parts of it are in the pages that a learner opens, or it is only used in making them. */
  readonly shipped: boolean;
  /** Whether this project asks for it itself. */
  readonly direct: boolean;
  /** Whether `npm ci --omit=dev` installs it. */
  readonly production: boolean;
}

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

interface Lock {
  readonly packages: Readonly<Record<string, Locked>>;
}

interface Manifest {
  readonly license?: unknown;
  readonly licenses?: unknown;
}

/** The names that this project's own entry asks for. */
const askedFor = ({ dependencies, devDependencies, optionalDependencies }: Locked = {}): Set<string> =>
  new Set(Object.keys({ ...dependencies, ...devDependencies, ...optionalDependencies }));

const TEXT = /^(?:licen[cs]e|copying)(?:\.(?:md|txt))?$/i;

/** A licence that the lock file does not name, as the package itself does; the oldest packages list several. */
function statedIn(folder: string): string {
  const file = join(folder, 'package.json');
  if (!existsSync(file)) return '';
  const { license, licenses } = JSON.parse(readFileSync(file, 'utf8')) as Manifest;
  const first: unknown = license ?? (Array.isArray(licenses) ? licenses[0] : licenses);
  if (typeof first === 'string') return first;
  return typeof first === 'object' && first !== null && 'type' in first ? String(first.type) : '';
}

/**
 * Only the part of a licence file that is about the package: some list below it what they were built from, which is no
 * part of what is shipped here.
 */
const ownPart = (text: string): string =>
  (text.split(/^# Licenses of bundled dependencies/m)[0] ?? text).replace(/\r\n/g, '\n').trim();

function textIn(folder: string): string {
  const name = existsSync(folder) ? readdirSync(folder).find((one) => TEXT.test(one)) : undefined;
  return name === undefined ? '' : ownPart(readFileSync(join(folder, name), 'utf8'));
}

/**
 * Every package that the lock file names, by name and then by version, with its licence.
 * @param root the project's folder, with its packages installed
 * @throws Error when a package that is shipped has no licence text, or is not there at all
 */
export function loadLicences(root: string = process.cwd()): Licence[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as Lock;
  const asked = askedFor(packages['']);
  const all = Object.entries(packages).flatMap(([path, locked]): Licence[] => {
    const name = path.split('node_modules/').at(-1) ?? '';
    if (name === '' || locked.version === undefined) return [];
    const folder = join(root, path);
    const top = path === `node_modules/${name}`;
    const shipped = top && SHIPPED.has(name);
    const text = shipped ? textIn(folder) : '';
    if (shipped && text === '') throw new Error(`${path}: expected its licence text, found none`);
    return [
      {
        name,
        version: locked.version,
        licence: locked.license ?? statedIn(folder),
        text,
        for: top ? (USES[name] ?? SHIPPED.get(name) ?? '') : '',
        shipped,
        direct: top && asked.has(name),
        production: !(locked.dev || locked.devOptional),
      },
    ];
  });
  const lost = [...SHIPPED.keys()].filter((name) => !all.some((one) => one.shipped && one.name === name));
  if (lost.length > 0) throw new Error(`expected ${lost.join(', ')} in the lock file, found no such package`);
  // Not the alphabet of some country: the order is the same on every machine.
  const order = ({ name, version }: Licence) => `${name} ${version}`;
  return all.sort((a, b) => (order(a) < order(b) ? -1 : 1));
}
