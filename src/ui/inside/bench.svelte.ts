import { closedContacts, evaluate } from '../../engine/circuit/plain.ts';
import { type Config, positionIndex, positionOf } from '../../engine/model/system.ts';
import { Motion } from '../wiring/motion.svelte.ts';
import { type Bench, benchWires, PART, powerOf, startOf } from './bench.ts';
import { sayInside } from './say.ts';

/** A part on the bench while somebody works it: what is fed, how it stands, and where it is on its way. */
export class Worked {
  readonly bench: Bench;
  readonly motion: Motion;
  fed = $state.raw<ReadonlySet<string>>(new Set());
  joined = $state.raw<ReadonlySet<string>>(new Set());
  config = $state.raw<Config>({ inputs: 0, place: 0 });

  constructor(bench: Bench) {
    this.bench = bench;
    this.fed = new Set(bench.start);
    this.config = startOf(bench);
    this.motion = new Motion(
      bench.system,
      () => ({ system: bench.system, wires: this.wires, config: this.config }),
      (place) => {
        this.config = { ...this.config, place };
      },
    );
  }

  readonly wires = $derived.by(() => benchWires(this.bench, this.fed, this.joined));
  readonly live = $derived.by(() => evaluate(this.bench.system, this.wires, this.config));
  readonly closed = $derived.by(() => closedContacts(this.bench.system, this.config));
  readonly says = $derived.by(() => sayInside(this.bench, this.wires, this.config));
  readonly position = $derived.by(() => positionOf(this.bench.system, this.bench.part, this.config.place));
  /** From 0 at rest to 1 at the end of its travel, on its way too. */
  readonly travel = $derived.by(() => {
    const mover = this.bench.system.movers[this.bench.part.mover];
    if (!mover) return 0;
    const at = this.motion.shown[this.bench.part.mover] ?? positionIndex(mover, this.config.place);
    return at / (mover.positions.length - 1);
  });
  readonly powered = $derived.by(() => ((this.config.inputs >> powerOf(this.bench)) & 1) === 1);

  /** A terminal, or a node inside the part: whether it is joined to line. */
  isLive(name: string): boolean {
    const { nodeOf } = this.bench.system;
    const node = nodeOf.get(`${PART}/${name}`) ?? nodeOf.get(`${PART}/(${name})`);
    return node !== undefined && this.live.line[node] === true;
  }

  isMade(contact: string): boolean {
    return this.bench.system.contacts.some(
      ({ part, spec }, c) => part === this.bench.index && spec.id === contact && this.closed[c] === true,
    );
  }

  works(load: string): boolean {
    return this.bench.system.loads.some(
      ({ part, spec }, k) => part === this.bench.index && spec.id === load && this.live.works[k] === true,
    );
  }

  feed(terminal: string): void {
    this.fed = this.fed.symmetricDifference(new Set([terminal]));
    this.motion.run();
  }

  join(terminal: string): void {
    this.joined = this.joined.symmetricDifference(new Set([terminal]));
    this.motion.run();
  }

  set(input: number): void {
    this.config = { ...this.config, inputs: this.config.inputs ^ (1 << input) };
    this.motion.run();
  }

  power(): void {
    this.set(powerOf(this.bench));
  }
}
