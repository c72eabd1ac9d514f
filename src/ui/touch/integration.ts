import type { AstroIntegration } from 'astro';

declare module 'astro' {
  interface AstroClientDirectives {
    'client:touch'?: boolean | string;
  }
}

/** Gives Astro the directive `client:touch`. */
export default function touch(): AstroIntegration {
  return {
    name: 'client:touch',
    hooks: {
      'astro:config:setup': ({ addClientDirective }) =>
        addClientDirective({ name: 'touch', entrypoint: './src/ui/touch/directive.ts' }),
    },
  };
}
