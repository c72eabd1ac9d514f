import type { Component } from 'svelte';
import type { Desk } from '../drawings/desk.svelte.ts';

/** A way to look at a live circuit. */
export type View = 'strip' | 'schematic' | 'pipes';
export type ViewOf = Component<{ desk: Desk }>;

export const viewNames: Readonly<Record<View, string>> = {
  strip: 'Strip',
  schematic: 'Schematic',
  pipes: 'Pipes',
};

/** The views that a lesson does not open with are fetched when asked for. */
export const fetchView: Readonly<Record<View, () => Promise<{ default: ViewOf }>>> = {
  strip: () => import('./later/strip.ts'),
  schematic: () => import('./later/schematic.ts'),
  pipes: () => import('./later/pipes.ts'),
};
