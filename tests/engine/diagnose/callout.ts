import { makeBench } from '../../../src/engine/diagnose/bench.ts';
import {
  type Candidate,
  candidateOf,
  failureCandidates,
  misplacedCandidates,
  swappedCandidates,
  together,
} from '../../../src/engine/diagnose/candidate.ts';
import { type Outcome, outcomeAt } from '../../../src/engine/diagnose/evidence.ts';
import type { Instrument } from '../../../src/engine/diagnose/instrument.ts';
import { arrive, type Setup } from '../../../src/engine/diagnose/setup.ts';
import { type Done, operate } from '../../../src/engine/diagnose/visit.ts';
import { enter, follow, refuse, type World } from '../../../src/engine/diagnose/world.ts';
import type { Settings } from '../../../src/engine/model/system.ts';
import type { Wire } from '../../../src/engine/model/wiring.ts';
import { librarySystems } from '../support/library.ts';
import { must } from '../support/must.ts';

/** A system of the library with its bench and one of its right wirings, the first unless told. */
export function site(id: string, reference?: string) {
  const { system, references } = must(
    librarySystems.find((one) => one.id === id),
    id,
  );
  const found = reference ? references.find((one) => one.id === reference) : references[0];
  const wires: readonly Wire[] = must(found, `reference of ${id}`).wires;
  return { system, wires, bench: makeBench(system) };
}

export type Site = ReturnType<typeof site>;

/** Faults by their ids: of a part (`pump: dead`), a broken wire (`wire: …`), two cores swapped (`swap: valve/white valve/grey`), a stray link (`link: a b`). */
export function fault({ system, wires }: Site, ...ids: readonly string[]): Candidate {
  const singles = [...failureCandidates(system, wires), ...misplacedCandidates(system, wires)];
  const swaps = swappedCandidates(system, wires);
  const one = (id: string): Candidate => {
    const [kind, a = '', b = ''] = id.split(' ');
    if (kind === 'link:') return candidateOf(system, [], [], [[a, b]]);
    if (kind !== 'swap:') {
      return must(
        singles.find((single) => single.id === id),
        id,
      );
    }
    return must(
      swaps.find(({ misplaced }) =>
        [a, b].every((core) =>
          misplaced.some(({ wire, landed }) => wire.includes(core) && landed.includes(core)),
        ),
      ),
      id,
    );
  };
  return ids.map(one).reduce((x, y) => must(together(system, x, y)));
}

/** A visit to one system with one known fault. */
export class Visit {
  setup: Setup;
  world: World;
  readonly site: Site;

  constructor(where: Site, candidate: Candidate, settings: Settings = { supply: 'on' }) {
    this.site = where;
    this.setup = arrive(where.system, where.wires, settings);
    this.world = enter(where.bench, this.setup, candidate);
  }

  /** Does something, and lets the system settle. */
  do(act: (setup: Setup) => Done): Done {
    const done = act(this.setup);
    this.setup = done.next;
    this.world = (done.newFuse ? refuse : follow)(this.site.bench, done.next, this.world);
    return done;
  }

  set(settings: Settings): this {
    this.do((setup) => operate(setup, settings));
    return this;
  }

  /** What a test shows; fails when that depends on a race. */
  private only(shows: (stand: World['stands'][number]) => Outcome): Outcome {
    const all = [...new Set(this.world.stands.map(shows))];
    if (all.length !== 1) throw new Error(`a race: ${all.join(' or ')}`);
    return must(all[0]);
  }

  read(instrument: Instrument, a: string, b: string): Outcome {
    const test = { kind: 'reads', instrument, between: [a, b] } as const;
    return this.only((stand) => outcomeAt(this.setup, stand, test));
  }

  works = (part: string): Outcome =>
    this.only((stand) => outcomeAt(this.setup, stand, { kind: 'works', part }));
  warms = (part: string): Outcome =>
    this.only((stand) => outcomeAt(this.setup, stand, { kind: 'warms', part }));
  stands = (part: string): Outcome =>
    this.only((stand) => outcomeAt(this.setup, stand, { kind: 'stands', part }));
}

/** Settings of the usual inputs, everything off or satisfied that is not named. */
export const call = {
  water: { 'hot-water': 'on', cylinder: 'calling', heating: 'off', room: 'satisfied' },
  heating: { 'hot-water': 'off', cylinder: 'satisfied', heating: 'on', room: 'calling' },
  both: { 'hot-water': 'on', cylinder: 'calling', heating: 'on', room: 'calling' },
  none: { 'hot-water': 'off', cylinder: 'satisfied', heating: 'off', room: 'satisfied' },
} satisfies Record<string, Settings>;
