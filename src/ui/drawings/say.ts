import type { Live } from '../../engine/circuit/plain.ts';
import {
  type Config,
  type Part,
  partOf,
  partState,
  positionOf,
  type System,
} from '../../engine/model/system.ts';
import { capital, list } from '../../engine/rules/words.ts';
import type { Graph } from '../schematic/graph.ts';
import { leadsOf, waysOf } from '../schematic/words.ts';
import { markOf } from '../wiring/names.ts';

/** A name inside a sentence: "Two-port valve" gives "two-port valve", "HW valve" stays. */
export const inSentence = (name: string): string =>
  /^[A-Z][^A-Z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

const COLOURS = /^(white|grey|orange|blue|brown|black|earth)$/;

/** A lead as a person says it: "orange of the two-port valve", "boiler SL". */
export function sayLead(system: System, node: number): string {
  const { name } = partOf(system, node);
  const mark = markOf(system.nodes[node]!);
  return COLOURS.test(mark) ? `${mark} of the ${inSentence(name)}` : `${inSentence(name)} ${mark}`;
}

/** A terminal of a part or of the strip: "terminal 7", "boiler SL". */
export function sayTerminal(system: System, node: number): string {
  const part = partOf(system, node);
  const mark = markOf(system.nodes[node]!);
  return part.kind.kind === 'strip' ? `terminal ${mark}` : sayLead(system, node);
}

/** What a net is at now. */
export function conditionOf(live: Live, node: number): 'live' | 'neutral' | 'earth' | 'dead' {
  if (live.line[node]) return 'live';
  if (live.neutral[node]) return 'neutral';
  return live.earth[node] ? 'earth' : 'dead';
}

/** Everything that wires alone join: "Terminal 7: orange of the two-port valve, boiler SL, pump L." */
export function sayNet(system: System, graph: Graph, net: number): string {
  const ways = waysOf(system, graph, net);
  const leads = leadsOf(system, graph, net).map((node) => sayLead(system, node));
  const where = ways.length > 0 ? `Terminal${ways.length > 1 ? 's' : ''} ${list(ways)}` : '';
  if (where === '')
    return `${capital(leads.join(', '))}${leads.length === 1 ? ': nothing is joined to it' : ''}.`;
  return leads.length > 0 ? `${where}: ${leads.join(', ')}.` : `${where}: no lead is landed there.`;
}

/** How a part stands, short enough for its box. */
export function sayPart(system: System, part: Part, config: Config, working: ReadonlySet<string>): string {
  if (part.mover >= 0) {
    const position = positionOf(system, part, config.place);
    return system.spec.parts[part.id]?.positions?.[position] ?? position;
  }
  const does = part.kind.work?.does;
  if (does)
    return working.has(part.id) ? { fires: 'firing', pumps: 'running', heats: 'heating' }[does] : 'off';
  const { setting } = partState(system, part, config);
  const slots = Object.entries(setting);
  return slots
    .map(([slot, now]) => {
      const label = system.inputs[part.slots[slot]!]!.label.toLowerCase();
      return slots.length > 1 ? `${label} ${now}` : now;
    })
    .join(' · ');
}
