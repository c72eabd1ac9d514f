import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';
import touch from './src/ui/touch/integration.ts';
import offline from './tools/offline.ts';
import { BASE } from './tools/package/relative.ts';
import shipped from './tools/package/shipped.ts';
import relativeSite from './tools/package/site.ts';
import wholeQuantities from './tools/whole-quantities.ts';

// A site for packages (`npm run package`): every address is relative, and nothing is kept for offline.
const forPackages = process.env.PUBLIC_FOR_PACKAGES === '1';

export default defineConfig({
  // SITE_BASE lets the same site live in a sub-folder, for example on a college server.
  base: forPackages ? BASE : (process.env.SITE_BASE ?? '/'),
  output: 'static',
  trailingSlash: 'ignore',
  // Keeps the spaces between inline tags, which Astro 7 otherwise drops.
  compressHTML: true,
  // Code highlighting would write style attributes, which the policy below forbids.
  markdown: { syntaxHighlight: false },
  integrations: [mdx(), svelte(), touch(), forPackages ? relativeSite() : offline()],
  security: {
    // Scripts and styles: our own files, and the inline ones by their hash.
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self'",
        "font-src 'self'",
        "connect-src 'self'",
        "form-action 'self'",
        "object-src 'none'",
        "base-uri 'none'",
      ],
    },
  },
  vite: {
    plugins: [wholeQuantities(), shipped()],
    build: {
      // A file turned into a data: address would need a hole in the policy above.
      assetsInlineLimit: 0,
      // Compiled MDX opens with a directive that the bundler remarks on, once for every page.
      rolldownOptions: {
        checks: { moduleLevelDirective: false },
        output: {
          // What every circuit on a page needs travels as one file: in crumbs it packs worse.
          advancedChunks: {
            groups: [
              { name: 'svelte', test: /node_modules[\\/]svelte/, priority: 1 },
              {
                name: 'circuit',
                test: /src[\\/](engine[\\/](model|parts|circuit[\\/]plain|plant[\\/]paths)|ui[\\/]wiring[\\/](names|cores|say|motion|Switches)|files[\\/]link)/,
              },
            ],
          },
        },
      },
    },
  },
});
