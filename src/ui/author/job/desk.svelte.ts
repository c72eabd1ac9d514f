import type { Layout } from '../../../course/layout.ts';
import { type Wire, wireKey } from '../../../engine/model/wiring.ts';
import { fetchLayoutOf } from '../../course/shelf.ts';
import { kindWords } from '../../jobs/kinds.ts';
import { Session } from '../../wiring/session.svelte.ts';
import { Desk } from '../desk.svelte.ts';
import type { Trouble } from '../trouble.ts';
import { type JobDraft, readJobDraft, tidyWires } from './draft.ts';
import { type Findings, findingsOf } from './findings.ts';
import { fileTroubles, wiringTroubles } from './troubles.ts';

const keysOf = (wires: readonly Wire[]): string => wires.map(wireKey).sort().join();

/** The desk for jobs: besides the draft it has the layouts that the draft names, and its wires as a session. */
export class JobDesk extends Desk<JobDraft> {
  /** The layout that is wired, and the one that was here before a conversion; absent while they are fetched. */
  now = $state.raw<Layout | undefined>();
  old = $state.raw<Layout | undefined>();
  /** The wires of the start as the wiring page has them. */
  session = $state.raw<Session | undefined>();
  lost = $state(false);

  readonly ready = $derived(this.now !== undefined && this.now.id === this.draft?.system);
  readonly fileTroubles: readonly Trouble[] = $derived(this.draft ? fileTroubles(this.draft) : []);
  /** Only what bears on the wiring: typing a title does not judge again. */
  readonly #wired = $derived.by(() => {
    const { draft } = this;
    if (!draft) return undefined;
    const { kind, system, wires, from, id } = draft;
    return JSON.stringify({ kind, system, wires, from, id: id === '' ? 'job' : id });
  });
  readonly #oldReady = $derived(this.draft?.kind !== 'convert' || this.old?.id === this.draft.from.system);
  readonly wiringTroubles: readonly Trouble[] = $derived.by(() => {
    const wired = this.#wired;
    if (wired === undefined || !this.ready || !this.now || !this.#oldReady) return [];
    return wiringTroubles({ ...this.#blank, ...JSON.parse(wired) }, this.now, this.old);
  });
  readonly findings: Findings | undefined = $derived.by(() => {
    const wired = this.#wired;
    if (wired === undefined || !this.ready || !this.now || !this.#oldReady) return undefined;
    // A wrong name is told as a trouble; wires that are only not right yet are judged all the same.
    try {
      return findingsOf({ ...this.#blank, ...JSON.parse(wired) }, this.now, this.old);
    } catch {
      return undefined;
    }
  });
  readonly troubles = $derived([...this.fileTroubles, ...this.wiringTroubles]);

  readonly #blank = { title: 'T', brief: 'B', summary: 'S' };

  constructor() {
    super({
      kind: 'job',
      nameOf: ({ title, kind }) => title.trim() || `A job without a title (${kindWords[kind].toLowerCase()})`,
      read: readJobDraft,
    });
  }

  /** Fetches the layouts that the draft names and seats its wires: call it whenever the draft has changed. */
  async settleLayouts(): Promise<void> {
    const { draft } = this;
    this.lost = false;
    try {
      if (draft && draft.system !== '' && this.now?.id !== draft.system)
        this.now = await fetchLayoutOf(draft.system);
      if (draft?.kind === 'convert' && draft.from.system !== '' && this.old?.id !== draft.from.system)
        this.old = await fetchLayoutOf(draft.from.system);
    } catch {
      this.lost = true;
    }
    this.seat();
  }

  /** The session shows the draft's wires. */
  seat(): void {
    const { draft, now } = this;
    if (!draft || !now || now.id !== draft.system) {
      this.session?.motion.stop();
      this.session = undefined;
      return;
    }
    const known = draft.wires.filter((wire) => wire.every((end) => now.system.nodeOf.has(end)));
    if (this.session?.system.spec.id === now.id) {
      if (keysOf(this.session.wires) !== keysOf(known)) this.session.load(known);
      return;
    }
    this.session?.motion.stop();
    const job = { id: 'author', title: '', brief: '', given: known, locked: false };
    this.session = new Session(now.system.spec, job, (wires) => {
      if (this.draft && keysOf(wires) !== keysOf(this.draft.wires)) this.land(wires);
      return this.kept;
    });
  }

  /** Puts these wires at the start. */
  land(wires: readonly Wire[]): void {
    if (this.now) this.change({ wires: tidyWires(this.now.system, wires) });
  }
}
