import type { ContactSpec, Core, LoadSpec, PartKind, PartOptions, PartState } from './part.ts';

/** Settings of inputs by name, such as `{ supply: 'on', 'hot-water': 'off' }`. */
export type Settings = Readonly<Record<string, string>>;

/** Settings that all hold together, or a list of them of which one set is enough. */
export type When = Settings | readonly Settings[];

/** Who calls for heat, where the heat must go, and what must shut when nobody calls. */
export interface Demand {
  readonly id: string;
  /** What is called, in words: "hot water". */
  readonly says: string;
  /** Called when these settings hold and its supply is on. */
  readonly when: When;
  /** The part that supplies it, where that is not the first supply. */
  readonly supply?: string;
  /** The demand that goes first: while that one is called, this one waits and must not be met. */
  readonly yields?: string;
  /** Parts that must work when called: all boilers and pumps unless told. */
  readonly runs?: readonly string[];
  /** Parts that may work when called, besides those that must. */
  readonly may?: readonly string[];
  /** The pipework part that must be warmed when called. */
  readonly heats: string;
  /** A valve that must itself be shut whenever this is not called. */
  readonly valve?: string;
  /** When not called, the boiler must not warm it (left out where the valve already guards it). */
  readonly coldWhenNotCalled?: boolean;
  /** While all of these hold, the call may be met but need not be. */
  readonly slack?: When;
  /** Heat that is stored: what its healthy thermostat and cut-out do once the store is hotter than the cut-out allows. */
  readonly overheated?: Settings;
}

export interface SystemPart {
  readonly kind: string;
  readonly name: string;
  /** A shorter name for tags and small drawings. */
  readonly short?: string;
  /** Which of the system's inputs works each slot of the part. */
  readonly inputs?: Readonly<Record<string, string>>;
  readonly options?: PartOptions;
  /** Colour of the core on a terminal, where the flex on this job has another than the part's usual one. */
  readonly cores?: Readonly<Record<string, Core>>;
  /** Terminals whose core wears a brown sleeve at both ends, because its own colour misleads. */
  readonly sleeved?: readonly string[];
  /** How to say that it stands in a position: `{ B: 'open to the cylinder' }`. */
  readonly positions?: Readonly<Record<string, string>>;
}

/** What brings heat into a store, and the inputs of the controls that stop it. */
export interface HeatSource {
  /** The part that brings it: a coil, an immersion heater. */
  readonly part: string;
  /** The input that its thermostat works. */
  readonly thermostat?: string;
  /** Inputs of its energy cut-outs. */
  readonly cutOuts: readonly string[];
}

/** Valves that let water out of a store. An expansion valve minds the pressure alone. */
export type Relief = 'temperature' | 'temperature and pressure' | 'expansion';

/** A vessel that holds hot water, as far as the rules about stores need to know it. */
export interface Store {
  readonly id: string;
  /** What people call it: "cylinder". */
  readonly says: string;
  /** Sealed from the air, so that it can be under pressure. */
  readonly unvented: boolean;
  readonly litres?: number;
  /** Whether the mains make up at once for water that is let out. */
  readonly refill: 'automatic' | 'none';
  readonly heatSources: readonly HeatSource[];
  readonly relief: readonly Relief[];
}

export interface InputLabel {
  readonly label: string;
}

/** A system as data: the parts on site, the pipes between them, who calls for what. */
export interface SystemSpec {
  readonly id: string;
  readonly title: string;
  readonly parts: Readonly<Record<string, SystemPart>>;
  readonly inputs: Readonly<Record<string, InputLabel>>;
  readonly pipes: readonly (readonly [string, string])[];
  readonly demands: readonly Demand[];
  readonly stores?: readonly Store[];
}

export interface Input {
  readonly id: string;
  readonly label: string;
  readonly settings: readonly [rest: string, active: string];
}

export interface Part {
  readonly id: string;
  readonly name: string;
  readonly short: string;
  readonly kind: PartKind;
  readonly slots: Readonly<Record<string, number>>;
  /** Index among the movers, or -1 for a part that does not move. */
  readonly mover: number;
}

export interface Contact {
  readonly part: number;
  readonly spec: ContactSpec;
  readonly a: number;
  readonly b: number;
}

export interface Load {
  readonly part: number;
  readonly spec: LoadSpec;
  readonly a: number;
  readonly b: number;
  readonly via: number;
  /** Failed: never works. */
  readonly dead?: boolean;
}

export interface Mover {
  readonly part: number;
  readonly positions: readonly string[];
  /** Loads any one of which moves it on. */
  readonly drives: readonly number[];
  readonly hold: number;
  /** Failed: never moves. */
  readonly stuck?: boolean;
  /** Failed: its spring does not take it back. */
  readonly unsprung?: boolean;
  /** Weight of this mover's position in a place number. */
  readonly stride: number;
}

/** Positions of all movers in one number: the sum of position index times stride. */
export type Place = number;
/** Settings of all inputs in one number: bit k is set when input k has its active setting. */
export type InputBits = number;

/** A place and settings: one configuration of the whole system. */
export interface Config {
  readonly inputs: InputBits;
  readonly place: Place;
}

/** A supply by number: the nodes of its poles before its switch, and those they come out on. */
export interface Supply {
  readonly part: number;
  /** The input that switches it, or -1. */
  readonly input: number;
  readonly line: number;
  readonly neutral: number;
  readonly earth: number;
  readonly out: { readonly line: number; readonly neutral: number; readonly earth: number };
}

/** A system made ready for the engine: everything by number, names kept for speaking. */
export interface System {
  readonly spec: SystemSpec;
  readonly inputs: readonly Input[];
  readonly parts: readonly Part[];
  /** Names of nodes; the first `terminals` of them are terminals, `part/terminal`. */
  readonly nodes: readonly string[];
  readonly terminals: number;
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly partOfNode: readonly number[];
  readonly contacts: readonly Contact[];
  readonly loads: readonly Load[];
  readonly movers: readonly Mover[];
  readonly places: number;
  /** The supply of the controls: the first of all. */
  readonly supply: Supply;
  readonly supplies: readonly Supply[];
}

/** The state of one part in a configuration. */
export function partState(system: System, part: Part, { inputs, place }: Config): PartState {
  const setting: Record<string, string> = {};
  for (const [slot, input] of Object.entries(part.slots)) {
    setting[slot] = system.inputs[input]!.settings[(inputs >> input) & 1]!;
  }
  return { setting, position: positionOf(system, part, place) };
}

/** The position of a part in a place, or the empty string for a part that does not move. */
export function positionOf(system: System, part: Part, place: Place): string {
  const mover = system.movers[part.mover];
  return mover ? mover.positions[positionIndex(mover, place)]! : '';
}

export const positionIndex = (mover: Mover, place: Place): number =>
  Math.floor(place / mover.stride) % mover.positions.length;

/** Settings by name from settings as bits. */
export function settingsOf(system: System, bits: InputBits): Record<string, string> {
  return Object.fromEntries(system.inputs.map((input, k) => [input.id, input.settings[(bits >> k) & 1]!]));
}

/** Bits from settings by name; inputs that are not named keep their rest setting. */
export function bitsOf(system: System, settings: Settings): InputBits {
  let bits = 0;
  for (const [k, input] of system.inputs.entries()) {
    if (settings[input.id] === input.settings[1]) bits |= 1 << k;
  }
  return bits;
}

/** Whether every named setting holds. */
export function holds(system: System, bits: InputBits, settings: Settings): boolean {
  return system.inputs.every((input, k) => {
    const wanted = settings[input.id];
    return wanted === undefined || input.settings[(bits >> k) & 1] === wanted;
  });
}

/** The sets of settings of which one is enough. */
export const alternatives = (when: When): readonly Settings[] =>
  Array.isArray(when) ? (when as readonly Settings[]) : [when as Settings];

/** Whether the supply is on. */
export const isOn = ({ input }: Supply, bits: InputBits): boolean => input < 0 || ((bits >> input) & 1) === 1;

/** The supply that a demand depends on. */
export const supplyOf = ({ supply, supplies, parts }: System, demand: Demand): Supply =>
  supplies.find(({ part }) => parts[part]!.id === demand.supply) ?? supply;

/** Whether a demand's settings hold, whatever else goes first or is off. */
export const wants = (system: System, bits: InputBits, { when }: Demand): boolean =>
  alternatives(when).some((settings) => holds(system, bits, settings));

/** Whether a demand is called: its settings hold, its supply is on, and none that goes first is called. */
export function isCalled(system: System, bits: InputBits, demand: Demand): boolean {
  if (!wants(system, bits, demand) || !isOn(supplyOf(system, demand), bits)) return false;
  const first = system.spec.demands.find(({ id }) => id === demand.yields);
  return !(first && isCalled(system, bits, first));
}

/** Ids of the parts that must work when a demand is called. */
export const runsOf = ({ parts }: System, { runs }: Demand): readonly string[] =>
  runs ?? parts.filter(({ kind }) => kind.work && kind.work.does !== 'heats').map(({ id }) => id);

/** The part a node belongs to. */
export const partOf = (system: System, node: number): Part => system.parts[system.partOfNode[node]!]!;

export function partNamed(system: System, id: string): Part {
  const part = system.parts.find((p) => p.id === id);
  if (!part) throw new Error(`no part "${id}" in system "${system.spec.id}"`);
  return part;
}
