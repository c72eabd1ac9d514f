import type { Scene } from '../../course/item.ts';
import type { Layout } from '../../course/layout.ts';
import { evaluate, partsAtWork } from '../../engine/circuit/plain.ts';
import type { Core } from '../../engine/model/part.ts';
import type { System } from '../../engine/model/system.ts';
import { wiresToLink } from '../../files/link.ts';
import { conditionOf, sayPart } from '../drawings/say.ts';
import { type Landing, readWays } from '../live/ways.ts';
import { nameOf } from '../wiring/names.ts';

/** A lead landed in a way. */
export interface PictureLead {
  readonly key: string;
  readonly says: string;
  readonly core: Core;
  /** The question points at it. */
  readonly lit: boolean;
}

/** A way of the strip and what is landed in it. */
export interface PictureWay {
  readonly id: string;
  readonly mark: string;
  /** What it is at; the empty string where the question asks for that. */
  readonly word: 'live' | 'neutral' | 'earth' | 'dead' | '';
  readonly lit: boolean;
  readonly asks: readonly PictureLead[];
  readonly acts: readonly PictureLead[];
}

/** A scene as it is drawn: everything said, nothing left to work out. Plain data, so a page can be sent with it. */
export interface ScenePicture {
  readonly layout: string;
  readonly title: string;
  readonly ways: readonly PictureWay[];
  readonly loose: readonly PictureLead[];
  readonly settings: readonly {
    readonly label: string;
    readonly setting: string;
    readonly active: boolean;
  }[];
  /** Parts that move or work, and how they stand. */
  readonly parts: readonly { readonly name: string; readonly says: string; readonly works: boolean }[];
  /** Names of terminals pointed at that no way shows. */
  readonly also: readonly string[];
  /** What follows the address of the drawings; absent where they would give the answer away. */
  readonly drawings?: string;
}

const partsOf = (system: System, { wires, config, dark }: Scene): ScenePicture['parts'] => {
  const working = partsAtWork(system, evaluate(system, wires, config));
  return system.parts
    .filter(({ mover, kind }) => (dark ? mover >= 0 && kind.ports : mover >= 0 || kind.work))
    .map((part) => ({
      name: part.name,
      says: sayPart(system, part, config, working),
      works: !dark && working.has(part.id),
    }));
};

/** Draws a wiring as it stands in a state. */
export function drawScene({ id, title, system }: Layout, scene: Scene): ScenePicture {
  const { wires, config, lit = [], dark } = scene;
  const live = evaluate(system, wires, config);
  const { ways, loose } = readWays(system, wires);
  const pointed = new Set(lit);
  const seen = new Set<string>();
  const lead = ({ key, says, core }: Landing): PictureLead => {
    const ends = key.split(' ').filter((end) => pointed.has(end) && !end.startsWith('strip/'));
    for (const end of ends) seen.add(end);
    return { key, says, core, lit: ends.length > 0 };
  };
  const rows = ways.map(({ node, mark, asks, acts }): PictureWay => {
    const way = system.nodes[node] ?? '';
    seen.add(way);
    return {
      id: way,
      mark,
      word: dark ? '' : conditionOf(live, node),
      lit: pointed.has(way),
      asks: asks.map(lead),
      acts: acts.map(lead),
    };
  });
  const loosely = loose.map(lead);
  const picture = {
    layout: id,
    title,
    ways: rows,
    loose: loosely,
    settings: system.inputs.map(({ label, settings }, k) => {
      const active = ((config.inputs >> k) & 1) === 1;
      return { label, setting: settings[active ? 1 : 0], active };
    }),
    parts: partsOf(system, scene),
    also: lit.filter((end) => !seen.has(end) && system.nodeOf.has(end)).map((end) => nameOf(system, end)),
  };
  return dark ? picture : { ...picture, drawings: `${id}/#w=${wiresToLink(system, wires)}` };
}
