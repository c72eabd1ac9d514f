import { type CalloutAddress, writeCallout } from '../../course/callouts/address.ts';
import type { KeptVisit } from '../../course/callouts/kept-visit.ts';
import { customerWords, foundWords } from '../../course/callouts/words.ts';
import type { Layout } from '../../course/layout.ts';
import type { Callout } from '../../engine/diagnose/callout.ts';
import type { Candidate } from '../../engine/diagnose/candidate.ts';
import { families, familyOf } from '../../engine/diagnose/symptom.ts';
import { candidatesFor, makeCalloutFrom } from '../../files/callout-pack.ts';
import { fetchCallout, fetchDoubles, fetchLayoutOf } from '../course/shelf.ts';
import { VisitDesk } from './desk.svelte.ts';
import { keptVisit } from './keep.ts';
import { Searcher } from './search/searcher.ts';
import type { Story } from './story.ts';
import type { VisitTerms } from './terms.ts';

interface Opened {
  readonly layout: Layout;
  readonly callout: Callout;
  readonly story: Story;
  readonly doubles: readonly Candidate[];
}

/** Whether a candidate is several faults at once. */
const isDouble = ({ failures, misplaced, strays }: Candidate): boolean =>
  failures.length + misplaced.length + strays.length > 1;

async function authored(id: string): Promise<Opened> {
  const [file, doubles] = await Promise.all([fetchCallout(id), fetchDoubles()]);
  const layout = await fetchLayoutOf(file.system);
  const callout = makeCalloutFrom(layout, file);
  const { title, level, customer, house, after } = file;
  const address = writeCallout({ kind: 'authored', id });
  const story: Story = { address, title, level, family: familyOf(callout), customer, house, after };
  return { layout, callout, story, doubles: candidatesFor(layout, file.wiring, doubles).filter(isDouble) };
}

async function made(address: Extract<CalloutAddress, { kind: 'made' }>): Promise<Opened> {
  const [layout, all] = await Promise.all([fetchLayoutOf(address.system), fetchDoubles()]);
  const searcher = new Searcher();
  try {
    const {
      callout: plain,
      doubles,
      family,
      difficulty,
    } = await searcher.make(layout, all, address.seed, address.level);
    const callout: Callout = { ...plain, system: layout.system };
    const story: Story = {
      address: writeCallout(address),
      title: families[family],
      level: difficulty.level,
      family,
      customer: customerWords(layout.system, { family, complaints: callout.complaints }, address.seed),
      house: foundWords(layout.system, callout.found),
    };
    return { layout, callout, story, doubles };
  } finally {
    searcher.stop();
  }
}

const opened = (address: CalloutAddress): Promise<Opened> =>
  address.kind === 'authored' ? authored(address.id) : made(address);

/**
 * Opens a callout, with the visit as it was left on this device. Rejects when something cannot be fetched, or when there
 * is no such callout.
 */
export async function openDesk(address: CalloutAddress): Promise<VisitDesk> {
  const { layout, callout, story, doubles } = await opened(address);
  const desk = new VisitDesk(layout, callout, story, doubles);
  const kept = await keptVisit(story.address);
  if (kept) desk.restore(kept);
  return desk;
}

/** Opens a callout for a visit that counts, with what was begun of it. Rejects as `openDesk` does. */
export async function openUnder(
  terms: VisitTerms,
  address: CalloutAddress,
  begun?: KeptVisit,
): Promise<VisitDesk> {
  const { layout, callout, story, doubles } = await opened(address);
  const desk = new VisitDesk(layout, callout, story, doubles, terms);
  if (begun?.callout === story.address) desk.restore(begun);
  return desk;
}
