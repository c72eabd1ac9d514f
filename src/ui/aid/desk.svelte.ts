import type { RightWiring } from '../../course/layout.ts';
import type { Observation, Outcome, Test } from '../../engine/diagnose/evidence.ts';
import type { Allowed } from '../../engine/diagnose/expert.ts';
import type { Settings, System } from '../../engine/model/system.ts';
import type { Message, Reply, Site } from './aid.worker.ts';
import { changedOver } from './controls.ts';
import { keepNote, keptNote } from './keep.ts';
import { readLink, writeLink } from './link.ts';
import { momentAt, type NextTest } from './next.ts';
import {
  answerTo,
  countFinds,
  freshMoment,
  freshNote,
  type History,
  type Moment,
  type Note,
  withFind,
  withoutFind,
} from './note.ts';
import type { Advice, Remains } from './report.ts';
import type { Symptom } from './symptoms.ts';

const EMPTY: Note = { wiring: '', who: 'looks', history: 'worked', moments: [] };
const NO_WIRING: RightWiring = { id: '', title: '', wires: [] };

/** A visit on the desk: what has been entered, and what the worker makes of it. It is kept in the address and on the device. */
export class AidDesk {
  readonly system: System;
  readonly wirings: readonly RightWiring[];
  note: Note = $state.raw(EMPTY);
  /** The moment that the controls stand at, and that findings are entered in. */
  current = $state(0);
  /** Controls that are changed correct this moment instead of beginning a new one. */
  correcting = $state(false);
  remains = $state.raw<Remains | undefined>();
  advice = $state.raw<Advice | undefined>();
  /** How far the search has come, from 0 to 1. */
  progress = $state(0);
  /** What of a link could not be read. */
  problems = $state.raw<readonly string[]>([]);
  /** Notes that a link has pushed aside, as the end of a link. */
  aside = $state.raw<string | undefined>();
  kept = $state(true);
  lost = $state(false);
  #worker: Worker | undefined;
  #asked = 0;

  constructor(system: System, wirings: readonly RightWiring[]) {
    this.system = system;
    this.wirings = wirings;
    this.note = freshNote(system, wirings[0]?.id ?? '');
  }

  readonly moment: Moment = $derived.by(() => this.note.moments[this.current] ?? freshMoment(this.system));
  readonly wiring: RightWiring = $derived.by(
    () => this.wirings.find(({ id }) => id === this.note.wiring) ?? this.wirings[0] ?? NO_WIRING,
  );
  readonly entries = $derived.by(() => countFinds(this.note));
  readonly link = $derived.by(() => writeLink(this.system, this.note));

  /** Brings back what the address or the device has, and sets the worker to work. Returns how to stop it. */
  open(site: Site, hash: string): () => void {
    this.#worker = new Worker(new URL('./aid.worker.ts', import.meta.url), { type: 'module' });
    this.#worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      if (data.asked !== this.#asked) return;
      if ('progress' in data) this.progress = data.progress;
      else if ('remains' in data) this.remains = data.remains;
      else this.advice = data.advice;
    };
    this.#worker.onerror = () => {
      this.lost = true;
    };
    this.#tell({ site });
    this.load(hash);
    return () => this.#worker?.terminate();
  }

  /** Takes the visit of a link, or the kept one where the link has none. */
  load(hash: string): void {
    const kept = keptNote(this.system.spec.id);
    const shown = hash.length > 1 ? hash : (kept ?? '');
    const { note, problems } = readLink(
      this.system,
      this.wirings.map(({ id }) => id),
      shown,
    );
    this.problems = problems;
    this.aside =
      kept !== undefined && kept !== writeLink(this.system, note) && kept.split('&').length > 4
        ? kept
        : undefined;
    this.#set(note, note.moments.length - 1);
  }

  #tell(message: Message): void {
    this.#worker?.postMessage(message);
  }

  #set(note: Note, current: number): void {
    this.note = note;
    this.current = current;
    this.advice = undefined;
    this.progress = 0;
    this.#asked += 1;
    this.#tell({ asked: this.#asked, note, moment: this.moment });
    if (!this.#worker) return;
    history.replaceState(history.state, '', writeLink(this.system, note));
    this.kept = keepNote(this.system.spec.id, writeLink(this.system, note));
  }

  #withMoment(moment: Moment, at: number = this.current): void {
    const moments = this.note.moments.map((one, k) => (k === at ? moment : one));
    this.#set({ ...this.note, moments }, this.current);
  }

  setWho(who: Allowed): void {
    this.#set({ ...this.note, who }, this.current);
  }

  setHistory(history: History): void {
    this.#set({ ...this.note, history }, this.current);
  }

  setWiring(wiring: string): void {
    this.#set({ ...this.note, wiring }, this.current);
  }

  /** Changes a control over: a new moment, unless nothing was found in this one or it is being corrected. */
  turn(id: string): void {
    this.#standAt(changedOver(this.system, this.moment.settings, id), this.correcting);
  }

  #standAt(settings: Settings, here: boolean): void {
    if (here || this.moment.finds.length === 0) {
      this.#withMoment({ ...this.moment, settings });
      return;
    }
    const moments = [...this.note.moments.filter(({ finds }) => finds.length > 0), { settings, finds: [] }];
    this.#set({ ...this.note, moments }, moments.length - 1);
  }

  /** Goes back to an earlier moment to add to it, or to correct its controls. */
  goTo(moment: number, correcting = false): void {
    this.correcting = correcting;
    this.#set(this.note, moment);
  }

  /** Enters a finding at the current moment; the same answer again takes it out. */
  enter(find: Observation): void {
    const known = answerTo(this.moment, find.test);
    const again = known !== undefined && known.outcome === find.outcome;
    this.#withMoment(again ? withoutFind(this.moment, find.test) : withFind(this.moment, find));
  }

  /** Enters the answer to the test that was proposed, with the controls as it asks for. */
  answer(next: NextTest, outcome: Outcome): void {
    this.correcting = false;
    const there = withFind(momentAt(this.system, this.moment, next.settings), { test: next.test, outcome });
    const stays = Object.keys(next.changes).length === 0 || this.moment.finds.length === 0;
    if (stays) {
      this.#withMoment(there);
      return;
    }
    const moments = [...this.note.moments.filter(({ finds }) => finds.length > 0), there];
    this.#set({ ...this.note, moments }, moments.length - 1);
  }

  /** Takes a finding out. A moment that has none left goes, unless it is the current one. */
  remove(moment: number, test: Test): void {
    const here = this.moment;
    const moments = this.note.moments
      .map((one, k) => (k === moment ? withoutFind(one, test) : one))
      .filter((one, k) => one.finds.length > 0 || one === here || k === this.current);
    const current = Math.min(
      moments.length - 1,
      this.current - (moment < this.current ? this.note.moments.length - moments.length : 0),
    );
    this.#set({ ...this.note, moments }, Math.max(0, current));
  }

  /** Enters a complaint as the first thing known. */
  complain({ settings, finds }: Symptom): void {
    const moments = [...this.note.moments.filter((one) => one.finds.length > 0), { settings, finds }];
    this.#set({ ...this.note, moments }, moments.length - 1);
  }

  /** Begins afresh, with who is at work and the drawing as they are. Returns how to bring the old note back. */
  clear(): () => void {
    const [note, current] = [this.note, this.current];
    this.correcting = false;
    this.#set({ ...note, moments: freshNote(this.system, note.wiring).moments }, 0);
    return () => this.#set(note, current);
  }
}
