import type { Plugin } from 'vite';
import { SHIPPED } from '../../src/files/site/packageUses.ts';

/** The package that a module is of; undefined for the project's own. */
export function packageOfModule(id: string): string | undefined {
  const [, inside] = /^.*[\\/]node_modules[\\/](.*)$/.exec(id.replace(/^\0/, '').split('?')[0] ?? '') ?? [];
  const [first = '', second = ''] = inside?.split(/[\\/]/) ?? [];
  return first.startsWith('@') ? `${first}/${second}` : first || undefined;
}

/**
 * Refuses a site with parts of a package whose licence is not shown: everything that reaches the browser has to stand in
 * `src/files/site/packageUses.ts`.
 */
export default function shipped(): Plugin {
  return {
    name: 'shipped packages',
    apply: 'build',
    generateBundle(_options, bundle) {
      if (this.environment.name !== 'client') return;
      const modules = Object.values(bundle).flatMap((one) =>
        // What was left out of a file, because nothing in it is used, is not shipped.
        one.type === 'chunk'
          ? Object.entries(one.modules).flatMap(([id, { renderedLength }]) =>
              renderedLength > 0 ? [id] : [],
            )
          : [],
      );
      const unknown = new Set(modules.map(packageOfModule).filter((name) => name && !SHIPPED.has(name)));
      if (unknown.size > 0)
        this.error(
          `expected the licence of every package in the site to be shown, found also ${[...unknown].join(', ')}`,
        );
    },
  };
}
