/// <reference types="astro/client" />

interface ImportMetaEnv {
  /** `1` when this build is for packages: addresses name files, and nothing is kept for offline. */
  readonly PUBLIC_FOR_PACKAGES?: string;
}
