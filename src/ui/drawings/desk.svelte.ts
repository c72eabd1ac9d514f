import { atWork, closedContacts, evaluate, type Live, partsAtWork } from '../../engine/circuit/plain.ts';
import { type Config, type Demand, partOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { list } from '../../engine/rules/words.ts';
import { drawSchematic, type Schematic } from '../schematic/schematic.ts';
import { Motion } from '../wiring/motion.svelte.ts';
import { followLive, type Journey, settleCall } from './follow.ts';
import { conditionOf, inSentence, sayNet } from './say.ts';

export interface Choice {
  readonly id: string;
  readonly title: string;
  readonly wires: readonly Wire[];
}

const CONDITION = { live: 'Live', neutral: 'Neutral', earth: 'Earth', dead: 'Dead' } as const;

/** One wiring on the desk: its switches, what is pointed at, and the walk along the live. All drawings read it. */
export class Desk {
  readonly system: System;
  readonly motion: Motion;
  choice = $state.raw<Choice>({ id: '', title: '', wires: [] });
  config = $state.raw<Config>({ inputs: 0, place: 0 });
  /** Number of the net that is pointed at. */
  chosen = $state<number | undefined>();
  journey = $state.raw<Journey | undefined>();
  step = $state(0);

  constructor(system: System, choice: Choice) {
    this.system = system;
    this.choice = choice;
    this.motion = new Motion(
      system,
      () => ({ system, wires: this.wires, config: this.config }),
      (place) => {
        this.config = { ...this.config, place };
      },
    );
    // Something to see at once: the first call, at rest.
    const [demand] = system.spec.demands;
    if (demand) this.stand(settleCall(system, choice.wires, demand));
  }

  readonly wires = $derived(this.choice.wires);
  readonly schematic: Schematic = $derived.by(() => drawSchematic(this.system, this.wires));
  readonly live: Live = $derived.by(() => evaluate(this.system, this.wires, this.config));
  readonly closed = $derived.by(() => closedContacts(this.system, this.config));
  readonly working = $derived.by(() => partsAtWork(this.system, this.live));
  readonly fires = $derived.by(() => atWork(this.system, this.live, 'fires'));
  readonly pumps = $derived.by(() => atWork(this.system, this.live, 'pumps'));
  readonly moving = $derived.by(() =>
    Object.fromEntries(
      this.system.movers.map(({ part }, m) => [this.system.parts[part]!.id, this.motion.shown[m] ?? 0]),
    ),
  );
  readonly now = $derived(this.journey?.steps[this.step]);
  /** The net that stands out: where the walk is, or what is pointed at. */
  readonly lit = $derived(this.now ? this.netOf(this.now.node) : this.chosen);
  /** Ids of the parts that the lit net belongs to, or the one part that a step is about. */
  readonly marked: ReadonlySet<string> = $derived.by(() => {
    const { contacts, loads, parts } = this.system;
    const { contact, load } = this.now ?? {};
    const at = contact !== undefined ? contacts[contact]!.part : load !== undefined ? loads[load]!.part : -1;
    if (at >= 0) return new Set([parts[at]!.id]);
    if (this.now) return new Set([partOf(this.system, this.now.node).id]);
    const nodes = this.lit === undefined ? [] : (this.schematic.graph.nodes[this.lit] ?? []);
    return new Set(nodes.map((node) => partOf(this.system, node).id));
  });
  /** Every net that has a terminal, in reading order: the order of the schematic, then what only joins. */
  readonly nets: readonly number[] = $derived.by(() => {
    const { order, nodes } = this.schematic.graph;
    const others = nodes.flatMap((_, net) => (order.includes(net) ? [] : [net]));
    return [...order, ...others].filter((net) => nodes[net]!.some((node) => node < this.system.terminals));
  });
  /** What stands out, in a sentence. */
  readonly says = $derived(this.now?.says ?? (this.lit === undefined ? '' : this.sayNet(this.lit)));
  /** The state in words, for whoever does not see the drawing. */
  readonly state = $derived.by(() => {
    const { inputs, parts } = this.system;
    const active = inputs.map(({ label, settings }, k) => {
      return `${label.toLowerCase()} ${settings[(this.config.inputs >> k) & 1]}`;
    });
    const work = parts.filter(({ id }) => this.working.has(id)).map(({ name }) => inSentence(name));
    return `With ${list(active)}. At work: ${list(work) || 'nothing'}.`;
  });
  readonly markedNames = $derived.by(() => {
    const marked = this.system.parts.filter(({ id, kind }) => this.marked.has(id) && kind.ports);
    return list(marked.map(({ name }) => name));
  });

  netOf(node: number): number {
    return this.schematic.graph.netOf(node);
  }

  /** "Terminal 7: orange of the two-port valve, boiler SL. Live." */
  sayNet(net: number): string {
    const node = this.schematic.graph.nodes[net]?.[0];
    if (node === undefined) return '';
    return `${sayNet(this.system, this.schematic.graph, net)} ${CONDITION[conditionOf(this.live, node)]}.`;
  }

  /** Points at a net; pointing at it again lets go. */
  point(net: number | undefined): void {
    this.journey = undefined;
    this.chosen = net === this.chosen ? undefined : net;
  }

  /** Goes to the net before or after the one pointed at, in reading order. */
  move(by: number): void {
    const at = this.chosen === undefined ? -1 : this.nets.indexOf(this.chosen);
    const to = at < 0 && by < 0 ? this.nets.length - 1 : Math.min(this.nets.length - 1, Math.max(0, at + by));
    this.journey = undefined;
    this.chosen = this.nets[to];
  }

  set(input: number, active: boolean): void {
    const inputs = active ? this.config.inputs | (1 << input) : this.config.inputs & ~(1 << input);
    this.journey = undefined;
    this.config = { ...this.config, inputs };
    this.motion.run();
  }

  take(choice: Choice): void {
    this.choice = choice;
    this.chosen = undefined;
    this.journey = undefined;
    this.motion.run();
  }

  follow(demand: Demand | undefined): void {
    this.chosen = undefined;
    this.journey = demand && followLive(this.system, this.wires, demand);
    this.step = 0;
    if (this.journey) this.stand(this.journey.config);
  }

  goTo(step: number): void {
    this.step = Math.max(0, Math.min((this.journey?.steps.length ?? 1) - 1, step));
  }

  /** Puts switches and valves where a state says, at once. */
  stand(config: Config): void {
    this.config = config;
    this.motion.place(config.place);
  }
}
