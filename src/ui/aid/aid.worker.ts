import type { Candidate } from '../../engine/diagnose/candidate.ts';
import { candidatesFor } from '../../files/callout-pack.ts';
import type { DoubleFault } from '../../files/double-faults.ts';
import { type LayoutFile, makeLayout } from '../../files/layout-file.ts';
import { Inquiry, suspects } from './inquiry.ts';
import type { History, Moment, Note } from './note.ts';
import { type Advice, adviceOn, type Remains, remainsOf } from './report.ts';

/** The system of the page, told once before any question. */
export interface Site {
  readonly file: LayoutFile;
  readonly doubles: readonly DoubleFault[];
}
/** Everything entered so far. A newer question stops an older one. */
export interface Question {
  readonly asked: number;
  readonly note: Note;
  /** The moment that the controls stand at now. */
  readonly moment: Moment;
}
export type Message = { readonly site: Site } | Question;
/** How far the search has come, from 0 to 1; then what remains; then what to do next. */
export type Reply = { readonly asked: number } & (
  | { readonly progress: number }
  | { readonly remains: Remains }
  | { readonly advice: Advice }
);

const say = (reply: Reply) => postMessage(reply);
/** Lets messages in: a question that has come meanwhile raises `newest`. */
const breathe = () => new Promise((resolve) => setTimeout(resolve));

let open: ((wiring: string, history: History) => Inquiry) | undefined;
let newest = -1;

/** Makes an inquiry for each wiring and history once. */
function inquiries({ file, doubles }: Site): (wiring: string, history: History) => Inquiry {
  const layout = makeLayout(file);
  const known = new Map<string, Inquiry>();
  return (wiring, history) => {
    const key = `${wiring} ${history}`;
    const found = known.get(key);
    if (found) return found;
    const wires = layout.right.find(({ id }) => id === wiring)?.wires ?? [];
    const all = candidatesFor(layout, wiring, doubles);
    const fresh = new Inquiry(layout.system, wires, suspects(layout.system, wires, all, history));
    known.set(key, fresh);
    return fresh;
  };
}

/** So many candidates are looked at between two reports of how far it has come. */
const CHUNK = 64;

/** The candidates that explain everything; undefined when a newer question has come meanwhile. */
async function search(inquiry: Inquiry, { moments }: Note, asked: number): Promise<Candidate[] | undefined> {
  const { candidates } = inquiry;
  const left: Candidate[] = [];
  for (let k = 0; k < candidates.length; k += CHUNK) {
    left.push(...inquiry.left(moments, candidates.slice(k, k + CHUNK)));
    say({ asked, progress: Math.min(1, (k + CHUNK) / candidates.length) });
    await breathe();
    if (asked !== newest) return undefined;
  }
  return left;
}

self.onmessage = async ({ data }: MessageEvent<Message>) => {
  if ('site' in data) {
    open = inquiries(data.site);
    return;
  }
  const { asked, note, moment } = data;
  newest = asked;
  await breathe();
  if (!open || asked !== newest) return;
  const inquiry = open(note.wiring, note.history);
  const make = open;
  const left = await search(inquiry, note, asked);
  if (!left) return;
  say({ asked, remains: remainsOf(inquiry, note, left, () => make(note.wiring, 'altered')) });
  await breathe();
  if (asked === newest) say({ asked, advice: adviceOn(inquiry, note, moment, left) });
};
