import { buildSystem } from '../model/build.ts';
import type { SystemSpec } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import { findKind } from '../parts/index.ts';
import { matches } from './as-found-matches.ts';
import { type Match, type Site, translate } from './as-found-parts.ts';
import { type Behaviour, differing, makeBehaviour, type RestRow, restRows } from './behaviour.ts';
import { countLanes, makeJudge } from './judge.ts';
import type { Verdict } from './verdict.ts';

/** A layout to compare with: its system and the wirings of it that are right. */
export interface Layout {
  readonly spec: SystemSpec;
  readonly references: readonly { readonly id: string; readonly wires: readonly Wire[] }[];
}

/** How like a reference wiring the site behaves. */
export interface Likeness {
  readonly layout: string;
  /** References from which it differs equally little: more than one where they behave alike. */
  readonly references: readonly string[];
  readonly match: Match;
  /** States in which it behaves otherwise: 0 when it behaves the same. */
  readonly differing: number;
}

export interface AsFound {
  /** The layouts it could be by its parts, the one it behaves most like first. */
  readonly likenesses: readonly Likeness[];
  /** Ids of layouts that match by their parts but have too many states to be compared. */
  readonly tooBig: readonly string[];
}

/**
 * Compares a site with every reference wiring of every layout whose parts match one to one by kind. Two wirings behave
 * alike when they rest in the same states, for every combination of the inputs and every resting state reachable, and
 * the same boilers fire and pumps run in each. Yields the share done, 0 to 1.
 */
export function* compareWithLayouts(site: Site, library: readonly Layout[]): Generator<number, AsFound> {
  const likenesses: Likeness[] = [];
  const tooBig: string[] = [];
  for (const [n, { spec, references }] of library.entries()) {
    const tries = matches(
      site,
      spec,
      references.map(({ wires }) => wires),
    );
    if (tries.length === 0 || references.length === 0) continue;
    let known: { id: string; behaviour: Behaviour }[];
    try {
      const observe = makeBehaviour(buildSystem(spec, findKind));
      known = references.map(({ id, wires }) => ({ id, behaviour: observe(wires) }));
    } catch {
      tooBig.push(spec.id);
      continue;
    }
    let best: Likeness | undefined;
    for (const [k, match] of tries.entries()) {
      const { system, wires } = translate(site, spec, match);
      const found = makeBehaviour(system)(wires);
      const apart = known.map(({ id, behaviour }) => ({
        id,
        states: countLanes(differing(found, behaviour)),
      }));
      const least = Math.min(...apart.map(({ states }) => states));
      if (!best || least < best.differing) {
        const ids = apart.filter(({ states }) => states === least).map(({ id }) => id);
        best = { layout: spec.id, references: ids, match, differing: least };
      }
      if (least === 0) break;
      yield (n + (k + 1) / tries.length) / library.length;
    }
    if (best) likenesses.push(best);
  }
  return { likenesses: likenesses.sort((a, b) => a.differing - b.differing), tooBig };
}

/** What a site does against what a reference does with the same settings. */
export interface Misbehaviour {
  readonly settings: RestRow['settings'];
  /** The states in which it can rest then, on site and in the reference. Empty: it never rests. */
  readonly here: readonly RestRow[];
  readonly there: readonly RestRow[];
}

/** A likeness looked at closely. */
export interface Closer {
  /** Settings with which the site does something else, in the order of the inputs; at most `most` of them. */
  readonly misbehaviours: readonly Misbehaviour[];
  /** With how many combinations of settings it does. */
  readonly settings: number;
  /** What the layout's judge says of the site, in the site's own names. */
  readonly verdict: Verdict;
}

/** Says where a site behaves otherwise than a reference, and what the layout's judge makes of it. */
export function lookCloser(
  site: Site,
  { spec, references }: Layout,
  { match, references: [nearest] }: Likeness,
  most = 40,
): Closer {
  const { system, wires } = translate(site, spec, match);
  const here = makeBehaviour(system)(wires);
  const reference = references.find(({ id }) => id === nearest)!;
  const there = makeBehaviour(buildSystem(spec, findKind))(reference.wires);
  const apart = differing(here, there);
  const { blocks, words, combinations } = here.frame;
  // With these settings, whatever the place: all states of the same settings are shown together.
  const settings = new Int32Array(blocks);
  for (let w = 0; w < words; w++) settings[w % blocks]! |= apart[w]!;
  const lanes = new Int32Array(words);
  let shown = 0;
  for (let lane = 0; lane < combinations.length && shown < most; lane++) {
    if (((settings[lane >> 5]! >>> (lane & 31)) & 1) === 0) continue;
    shown++;
    for (let w = lane >> 5; w < words; w += blocks) lanes[w]! |= 1 << (lane & 31);
  }
  const bySettings = new Map<number, { here: RestRow[]; there: RestRow[]; settings: RestRow['settings'] }>();
  for (const [side, behaviour] of [
    ['here', here],
    ['there', there],
  ] as const) {
    for (const row of restRows(behaviour, lanes)) {
      const at = bySettings.get(row.config.inputs) ?? { here: [], there: [], settings: row.settings };
      at[side].push(row);
      bySettings.set(row.config.inputs, at);
    }
  }
  return {
    misbehaviours: [...bySettings].sort(([a], [b]) => a - b).map(([, row]) => row),
    settings: countLanes(settings),
    verdict: makeJudge(system).judge(wires),
  };
}
