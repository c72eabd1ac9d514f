/** What a part of `src/` may import. */
export type Layer = {
  /** The other layers that it may import. */
  readonly layers: readonly string[];
  /** The packages that it may import; `any` in the layers that meet the outside world. */
  readonly packages: readonly string[] | 'any';
  /** True when it may use Node's own modules. */
  readonly node: boolean;
  /** True when it must not know of the browser, the clock or chance. */
  readonly pure: boolean;
};

/**
 * The layers of `src/`, lowest first. `site` is the folder `src/files/site/`: it reads the content folder while the
 * site is built, so nothing that runs in the browser may import it. `layouts` are the `.astro` files of `src/ui/`,
 * which run at that time too. A file right in `src/` (such as a content config) counts as a page.
 */
export const layers: Readonly<Record<string, Layer>> = {
  engine: { layers: [], packages: [], node: false, pure: true },
  course: { layers: ['engine'], packages: ['ts-fsrs'], node: false, pure: true },
  files: {
    layers: ['engine', 'course'],
    packages: ['zod', 'yaml', 'fflate', 'papaparse'],
    node: false,
    pure: false,
  },
  site: { layers: ['engine', 'course', 'files'], packages: ['zod', 'yaml', 'lunr'], node: true, pure: false },
  store: { layers: ['engine', 'course', 'files'], packages: ['idb'], node: false, pure: false },
  ui: { layers: ['engine', 'course', 'files', 'store'], packages: 'any', node: false, pure: false },
  layouts: {
    layers: ['engine', 'course', 'files', 'store', 'site', 'ui'],
    packages: 'any',
    node: true,
    pure: false,
  },
  pages: {
    layers: ['engine', 'course', 'files', 'store', 'site', 'ui', 'layouts'],
    packages: 'any',
    node: true,
    pure: false,
  },
  cli: { layers: ['engine', 'course', 'files', 'site'], packages: [], node: true, pure: false },
};

/** The order inside the engine: each row imports only from the rows before it, and from itself. */
export const engineOrder: readonly (readonly string[])[] = [
  ['model'],
  ['parts'],
  ['circuit'],
  ['meter', 'plant'],
  ['explore'],
  ['rules'],
  ['grade'],
  ['faults'],
  ['diagnose'],
];

/** The most lines that a source file may have. */
export const lineCeiling = 400;

/** Names that would bring the browser, the machine, the clock or the network into a pure layer. */
export const impureGlobals: ReadonlySet<string> = new Set([
  ...[
    'window',
    'document',
    'navigator',
    'location',
    'history',
    'globalThis',
    'self',
    'HTMLElement',
    'Element',
  ],
  ...['localStorage', 'sessionStorage', 'indexedDB', 'fetch', 'XMLHttpRequest', 'WebSocket', 'Worker'],
  ...[
    'Date',
    'performance',
    'Temporal',
    'crypto',
    'setTimeout',
    'setInterval',
    'setImmediate',
    'queueMicrotask',
  ],
  ...['requestAnimationFrame', 'process', 'Buffer', 'require', 'console', 'alert', 'Math.random'],
]);

/** Ways to put a string into a page as markup. */
export const markupSinks: ReadonlySet<string> = new Set([
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'setHTMLUnsafe',
  'dangerouslySetInnerHTML',
]);
