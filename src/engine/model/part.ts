/** Colour of a core as the trade names it (fixed cores: BS 7671 table 51; flex cores of valves: common practice). */
export type Core = 'brown' | 'blue' | 'green-yellow' | 'black' | 'grey' | 'white' | 'orange';

/**
 * What a terminal is for, as far as rules and drawings need to know it. `extra-low` is a part's own circuit at 50 V a.c.
 * or less: a sensor, a bus, a volt-free pair that mains must never reach.
 */
export type Duty = 'line' | 'neutral' | 'earth' | 'switched' | 'joint' | 'extra-low';

export interface TerminalSpec {
  /** The marking the trade uses on it, or the colour of its lead. */
  readonly id: string;
  readonly core: Core;
  readonly duty: Duty;
  /** One short sentence for a learner. */
  readonly does: string;
  /** The colour of the sleeve over a core whose own colour would mislead. */
  readonly sleeve?: Core;
}

/** A switch, thermostat or trip that somebody or something outside the circuit sets. */
export interface InputSpec {
  readonly slot: string;
  /** The first setting is the one on a cold, switched-off system. */
  readonly settings: readonly [rest: string, active: string];
}

/** A part's own state: the settings of its inputs by slot, and the position of its mechanism. */
export interface PartState {
  readonly setting: Readonly<Record<string, string>>;
  readonly position: string;
}

/** A contact joins two nodes of its part, both ways, whenever `closed` says so. */
export interface ContactSpec {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly closed: (state: PartState) => boolean;
  /** The most amps it may carry, where its rating is less than the fuse's. */
  readonly amps?: number;
}

/**
 * A load works when one end is joined to line and the other to neutral by wires and closed contacts alone.
 * `via` names a node the current must pass that nothing else may clamp: with that node joined to
 * line or neutral elsewhere, the load does not work (the half-wave feed of a mid-position valve).
 * An `ownLoop` load is fed by the part itself: it works when its two ends are joined to each other (a volt-free pair).
 */
export interface LoadSpec {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly via?: string;
  readonly ownLoop?: true;
  /** A load that a system runs without (an accelerator heater): its neutral is advice only. */
  readonly optional?: boolean;
}

/**
 * A mechanism: `drive` supplied (any one of them) moves it one position on, else `hold` supplied keeps it, else it goes
 * one back: a spring shuts a valve, a relay drops out, an overrun timer runs down.
 */
export interface Motion {
  readonly positions: readonly string[];
  readonly drive: string | readonly string[];
  readonly hold?: string;
}

/**
 * An element for the meter's nodal solution: ohms between two nodes of the part, or a diode (with ohms in series).
 * Values that nobody publishes are assumptions and say so where they are given.
 */
export interface Element {
  readonly id: string;
  readonly between: readonly [string, string];
  readonly ohms: number;
  readonly diode?: boolean;
}

/**
 * One way a part of this kind fails, said as what it changes. Everything else about the part stays as it is, so the
 * same engine works out what follows.
 */
export interface FailureSpec {
  readonly id: string;
  /** What has happened, to follow the part's name: "lets by while shut". */
  readonly says: string;
  /** Contacts that stay as they are, whatever the part's state; `faults` below may be closed here too. */
  readonly contacts?: Readonly<Record<string, 'closed' | 'open'>>;
  /** Loads that no longer work. */
  readonly dead?: readonly string[];
  /** The position the mechanism no longer leaves. */
  readonly stuck?: string;
  /** The spring no longer takes the mechanism back. */
  readonly unsprung?: true;
  /** Water ports joined in every position. */
  readonly leaks?: readonly (readonly [string, string])[];
  /** The loads its work now needs: fewer than when healthy, so it works uncalled. */
  readonly needs?: Needs;
}

/** Loads that must all work; where an entry is a list, any one of it will do. */
export type Needs = readonly (string | readonly string[])[];

export interface PartKind {
  readonly kind: string;
  readonly title: string;
  readonly terminals: readonly TerminalSpec[];
  /** Nodes inside the part that no wire can reach. */
  readonly inner?: readonly string[];
  readonly inputs?: readonly InputSpec[];
  readonly contacts?: readonly ContactSpec[];
  readonly loads?: readonly LoadSpec[];
  readonly elements?: readonly Element[];
  readonly motion?: Motion;
  /** Set on a supply: the inner nodes that are the poles, the terminals they come out on, and the rating of its fuse in amps. */
  readonly supply?: {
    readonly line: string;
    readonly neutral: string;
    readonly earth: string;
    readonly out: { readonly line: string; readonly neutral: string; readonly earth: string };
    readonly fuse?: number;
  };
  /** What the part does when it works, and the loads it needs for it. `heats`: without water moving, like an immersion. */
  readonly work?: { readonly does: 'fires' | 'pumps' | 'heats'; readonly needs: Needs };
  /** Terminals that need line at all times. */
  readonly permanentLine?: readonly string[];
  /** Contacts that are volt-free and meant to be fed at the first node and to deliver at the second. */
  readonly endSwitch?: { readonly feed: string; readonly out: string };
  /** Water ports, and which of them are joined inside in a position. */
  readonly ports?: readonly string[];
  readonly passes?: (position: string) => readonly (readonly [string, string])[];
  /** Joints inside the part that only a failure makes: a diode gone short, a core touching the case. */
  readonly faults?: readonly { readonly id: string; readonly between: readonly [string, string] }[];
  readonly failures?: readonly FailureSpec[];
  /**
   * A pipework part that gives heat to the water (a boiler), takes it (a coil, radiators), lets water by between flow and
   * return (a bypass, a header), or warms a store with no water moving (an immersion).
   */
  readonly heat?: 'gives' | 'takes' | 'bypass' | 'warms';
  /** Water must be able to move whenever a pump runs or the part fires: a boiler with pump overrun. */
  readonly minimumFlow?: true;
  /** The position of its mechanism in which it asks for a pump outside it to run. */
  readonly pumpedWhile?: string;
}

/** Options a system may give to a part of this kind, such as the number of ways of a strip. */
export type PartOptions = Readonly<Record<string, number | string>>;

/** Ids of the loads that move a mechanism on. */
export const drivesOf = ({ drive }: Motion): readonly string[] =>
  typeof drive === 'string' ? [drive] : drive;
