import type { StageScript, StageView } from '../../course/stage.ts';
import { stageWires } from '../../course/stage.ts';
import type { System } from '../../engine/model/system.ts';
import type { Choice } from '../drawings/desk.svelte.ts';
import { eraseAt, readSheets, type Sheets, type Stroke } from './ink.ts';
import { Digits } from './keys.ts';
import { LIGHTS, type Light } from './light.ts';
import { LETTERS, type Letters } from './sizes.ts';
import { type Slide, slidesOf, walkScript } from './slides.ts';

/** What the device keeps of how somebody likes the stage. */
const LIKES = 'switched-live/stage';
const INK = 'switched-live/stage-ink/';

const keep = (name: string, value: unknown): void => {
  try {
    localStorage.setItem(name, JSON.stringify(value));
  } catch {
    /* nothing to keep it in: it lasts for the page */
  }
};
const kept = (name: string): string | null => {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
};

export type Tool = 'none' | 'pen' | 'erase';
export type Scheme = 'auto' | 'light' | 'dark';

/** What a show is made from: a script, or a call that is followed with no script at all. */
export interface Source {
  readonly system: System;
  readonly choice: Choice;
  readonly script?: Pick<StageScript, 'steps' | 'view'>;
  /** Id of the call that is followed where there is no script. */
  readonly call?: string;
}

/** A show: its slides, where it is, how it looks, and what is drawn on it. */
export class Show {
  source = $state.raw<Source>({} as Source);
  /** Drawings instead of those of the script. */
  view = $state.raw<readonly StageView[] | undefined>();
  at = $state(0);
  letters = $state<Letters>('m');
  whole = $state(false);
  scheme = $state<Scheme>('auto');
  /** Whether keys of one character are listened to. */
  keys = $state(true);
  tool = $state<Tool>('none');
  colour = $state<1 | 2>(1);
  width = $state<1 | 2>(1);
  light = $state.raw<Light['kind']>('script');
  chosen = $state.raw<readonly string[]>([]);
  pointer = $state.raw<readonly [number, number] | undefined>();
  pan = $state.raw<readonly [number, number]>([0, 0]);
  blank = $state(false);
  sheets = $state.raw<Sheets>({});
  #past: { readonly slide: number; readonly strokes: readonly Stroke[] }[] = [];
  readonly #digits = new Digits();
  /** What the ink of this show is kept under. */
  #name = '';

  constructor(source: Source) {
    this.source = source;
    this.#takeLikes();
    this.#open();
  }

  readonly slides: readonly Slide[] = $derived.by(() => {
    const { system, choice, script, call } = this.source;
    const demand = system.spec.demands.find(({ id }) => id === call) ?? system.spec.demands[0];
    const played = script ??
      (demand && walkScript(system, demand, ['strip'])) ?? { view: ['strip'], steps: [] };
    const slides = slidesOf(system, choice.wires, played);
    const { view } = this;
    return view ? slides.map((slide) => ({ ...slide, views: view })) : slides;
  });
  readonly slide: Slide | undefined = $derived(this.slides[this.at]);
  readonly before = $derived(this.slides[this.at - 1]);
  readonly longest = $derived(Math.max(20, ...this.slides.map(({ says }) => says.length)));
  readonly strokes = $derived(this.sheets[this.at] ?? []);
  readonly shownLetters: Letters = $derived(this.whole ? 's' : this.letters);
  readonly beam: Light = $derived(
    this.light === 'chosen'
      ? { kind: 'chosen', names: this.chosen }
      : this.light === 'pointer'
        ? { kind: 'pointer', at: this.pointer }
        : { kind: this.light },
  );

  take(source: Source): void {
    this.source = source;
    this.at = 0;
    this.pan = [0, 0];
    this.#open();
  }

  go(to: number): void {
    this.at = Math.max(0, Math.min(this.slides.length - 1, to));
    this.pan = [0, 0];
    this.blank = false;
  }

  typeDigit(digit: number, at: number): void {
    const step = this.#digits.type(digit, at, this.slides.length);
    if (step !== undefined) this.go(step - 1);
  }

  like(what: { letters?: Letters; scheme?: Scheme; keys?: boolean }): void {
    Object.assign(this, what);
    if (what.letters) this.whole = false;
    keep(LIKES, { letters: this.letters, scheme: this.scheme, keys: this.keys });
  }

  grow(by: number): void {
    const k = LETTERS.indexOf(this.letters) + by;
    const letters = LETTERS[k];
    if (letters) this.like({ letters });
  }

  turnLight(): void {
    this.light = LIGHTS[(LIGHTS.indexOf(this.light) + 1) % LIGHTS.length] ?? 'off';
  }

  choose(name: string): void {
    this.chosen = this.chosen.includes(name)
      ? this.chosen.filter((one) => one !== name)
      : [...this.chosen, name];
  }

  draw(stroke: Stroke): void {
    this.#change([...this.strokes, stroke]);
  }

  erase(x: number, y: number): void {
    const left = eraseAt(this.strokes, x, y);
    if (left !== this.strokes) this.#change(left);
  }

  clear(): void {
    if (this.strokes.length > 0) this.#change([]);
  }

  undo(): void {
    const last = this.#past.pop();
    if (!last) return;
    this.sheets = { ...this.sheets, [last.slide]: last.strokes };
    this.at = last.slide;
    keep(this.#name, this.sheets);
  }

  #change(strokes: readonly Stroke[]): void {
    this.#past.push({ slide: this.at, strokes: this.strokes });
    this.sheets = { ...this.sheets, [this.at]: strokes };
    keep(this.#name, this.sheets);
  }

  #open(): void {
    const { system, choice, script, call } = this.source;
    const text = script ? JSON.stringify(script) : (call ?? '');
    let hash = 5381;
    for (const letter of `${choice.id} ${text}`) hash = (hash * 33 + letter.charCodeAt(0)) % 0x7fffffff;
    this.#name = `${INK}${system.spec.id}/${hash.toString(36)}`;
    this.#past = [];
    this.sheets = readSheets(kept(this.#name));
  }

  #takeLikes(): void {
    try {
      const { letters, scheme, keys } = JSON.parse(kept(LIKES) ?? '{}') as Record<string, unknown>;
      if (LETTERS.includes(letters as Letters)) this.letters = letters as Letters;
      if (scheme === 'light' || scheme === 'dark') this.scheme = scheme;
      if (keys === false) this.keys = false;
    } catch {
      /* what was kept is not ours */
    }
  }
}

/** The wiring of a script as a choice: one of the layout's own, or the wires that it gives. */
export function choiceOf(system: System, choices: readonly Choice[], script: StageScript): Choice {
  if (script.wires) return { id: 'own', title: 'The wires of the script', wires: script.wires };
  const layout = { id: system.spec.id, title: '', alsoCalled: [], system, right: choices, wrong: [] };
  const wires = stageWires(layout, script);
  return choices.find((choice) => choice.wires === wires) ?? { id: 'own', title: '', wires };
}
