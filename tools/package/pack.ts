import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type PackedWork, type Standard, writeSetting } from '../../src/ui/lms/setting.ts';
import { cmi5Structure } from './cmi5.ts';
import type { Contents } from './contents.ts';
import { filesBelow } from './files.ts';
import { scorm12Manifest } from './scorm-12.ts';
import { scorm2004Manifest } from './scorm-2004.ts';
import { zipOf } from './zip.ts';

/** Files by path, with `/`. */
export type Files = ReadonlyMap<string, Uint8Array>;

const SCHEMAS = fileURLToPath(new URL('./schemas/', import.meta.url));
const SETTING = 'launch/setting.json';

interface Kind {
  readonly manifest: string;
  /** The page that the platform opens. */
  readonly launch: string;
  /** The beginning of paths that only other kinds of package have a use for. */
  readonly without?: string;
  readonly write: (contents: Contents) => string;
  /** Folder of the schema files that stand beside the manifest. */
  readonly schemas?: string;
}

/** The page for cmi5 may speak with other servers, which no other page needs to. */
const CMI5_LAUNCH = 'launch/cmi5/index.html';
const SCORM = { manifest: 'imsmanifest.xml', launch: 'launch/index.html', without: 'launch/cmi5/' };

const KINDS: Readonly<Record<Standard, Kind>> = {
  'scorm-1.2': { ...SCORM, write: scorm12Manifest, schemas: 'scorm-1.2' },
  'scorm-2004': { ...SCORM, write: scorm2004Manifest, schemas: 'scorm-2004' },
  cmi5: { manifest: 'cmi5.xml', launch: CMI5_LAUNCH, write: cmi5Structure },
};

/** Every file below a folder. */
export const readFiles = (folder: string): Files =>
  new Map(filesBelow(folder).map((file) => [file, readFileSync(join(folder, file))]));

/** What a package is of, and how it is called on a platform. */
export interface Order {
  readonly work: PackedWork;
  readonly version: string;
  /** The tutor's own pass mark, 0 to 1. */
  readonly passMark?: number | undefined;
}

const COURSE_ABOUT =
  'Learn to wire heating controls on a strip that judges your wiring in every state. Lessons, questions, wiring jobs and callouts.';

/** The name of a package, and what its files are called after. */
export const nameOf = (work: PackedWork): string =>
  work.kind === 'course' ? 'switched-live' : `switched-live-${work.coursework.id}`;

function contentsOf({ work, version, passMark }: Order, launch: string, files: readonly string[]): Contents {
  const common = { id: nameOf(work), version, launch, files, passMark };
  if (work.kind === 'course') return { ...common, title: work.title, about: COURSE_ABOUT };
  const { title, says } = work.coursework;
  return { ...common, title, about: says?.trim() || `Coursework in Switched Live: ${title}` };
}

/**
 * A package for a learning platform: the whole site, what the launch page needs to know, and the manifest at the root.
 * @param site the site as it was built for packages
 * @returns the bytes of the zip; the same for the same site and order
 * @throws Error when the site has no launch page
 */
export function packageOf(standard: Standard, site: Files, order: Order): Uint8Array {
  const kind = KINDS[standard];
  if (!site.has(kind.launch)) throw new Error(`expected the site to have ${kind.launch}, found none`);
  const { without } = kind;
  const files = new Map([...site].filter(([name]) => without === undefined || !name.startsWith(without)));
  files.set(SETTING, Buffer.from(writeSetting({ standard, work: order.work })));
  if (kind.schemas)
    for (const [name, bytes] of readFiles(join(SCHEMAS, kind.schemas))) files.set(name, bytes);
  const contents = contentsOf(order, kind.launch, [...files.keys()].sort());
  files.set(kind.manifest, Buffer.from(kind.write(contents)));
  return zipOf(files, kind.manifest);
}
