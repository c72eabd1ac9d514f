import type { Layout } from '../../../course/layout.ts';
import { playStage, type StageState, stageWires } from '../../../course/stage.ts';
import { fetchLayoutOf } from '../../course/shelf.ts';
import type { Choice } from '../../drawings/desk.svelte.ts';
import { type Slide, slidesOf } from '../../stage/slides.ts';
import { Desk } from '../desk.svelte.ts';
import type { Trouble } from '../trouble.ts';
import { readStageDraft, type StageDraft, scriptOf } from './draft.ts';
import { scriptTroubles } from './troubles.ts';

/** A script as far as it can be played. */
export interface Played {
  readonly choice: Choice;
  readonly slides: readonly Slide[];
  /** How each step stands. */
  readonly states: readonly StageState[];
  /** The number of the first slide of each step, from 0. */
  readonly first: readonly number[];
}

/** The desk for stage scripts: besides the draft it has the layout, and the script played on it. */
export class StageDesk extends Desk<StageDraft> {
  layout = $state.raw<Layout | undefined>();
  lost = $state(false);

  readonly ready = $derived(this.layout !== undefined && this.layout.id === this.draft?.system);
  readonly troubles: readonly Trouble[] = $derived(
    this.draft ? scriptTroubles(this.draft, this.ready ? this.layout : undefined) : [],
  );
  readonly played: Played | undefined = $derived.by(() => {
    const { draft, layout } = this;
    if (!draft || !layout || !this.ready) return undefined;
    // A name that is not there is told as a trouble; until it is put right there is nothing to show.
    try {
      const script = scriptOf(draft);
      const wires = stageWires(layout, script);
      const choice = { id: draft.wiring || 'script', title: script.title, wires };
      const first = script.steps.map(
        (_, k) => slidesOf(layout.system, wires, { ...script, steps: script.steps.slice(0, k) }).length,
      );
      const states = playStage(layout.system, wires, script);
      return { choice, slides: slidesOf(layout.system, wires, script), states, first };
    } catch {
      return undefined;
    }
  });

  constructor() {
    super({
      kind: 'stage',
      nameOf: ({ title }) => title.trim() || 'A script without a title',
      read: readStageDraft,
    });
  }

  /** Fetches the layout that the draft names: call it whenever the draft has changed. */
  async settleLayout(): Promise<void> {
    const { draft } = this;
    this.lost = false;
    if (!draft || draft.system === '' || this.layout?.id === draft.system) return;
    try {
      this.layout = await fetchLayoutOf(draft.system);
    } catch {
      this.lost = true;
    }
  }
}
