import { partNamed, partOf, type System } from '../../../engine/model/system.ts';
import { list, sayNode } from '../../../engine/rules/words.ts';
import { isOwnLead, type LandedCore } from './seen.ts';

const isStrip = (system: System, part: string): boolean => partNamed(system, part).kind.kind === 'strip';

/** A terminal inside a sentence: "terminal 7", "three-port valve white". */
export const sayTerminal = (system: System, terminal: string): string =>
  sayNode(system, system.nodeOf.get(terminal) ?? 0);

/** A terminal on a label: "strip 7", "3-port white". */
export function shortTerminal(system: System, terminal: string): string {
  const { id, short, kind } = partOf(system, system.nodeOf.get(terminal) ?? 0);
  const mark = terminal.slice(id.length + 1);
  return kind.kind === 'strip' ? `strip ${mark}` : `${short} ${mark}`;
}

/** The other end of a core, short: "Room stat", "3-port orange", "7" on an open strip, "strip" on a covered one. */
export function sayFar(system: System, { farPart, farMark }: LandedCore): string {
  if (isStrip(system, farPart)) return farMark ?? 'strip';
  const { short } = partNamed(system, farPart);
  return farMark === undefined ? short : `${short} ${farMark}`;
}

/** What lies in a terminal, for whoever does not see it: "brown core to the room stat, orange lead of the 3-port". */
export function sayCores(system: System, cores: readonly LandedCore[]): string {
  if (cores.length === 0) return 'no core in it';
  return list(
    cores.map((core) => {
      const { short } = partNamed(system, core.farPart);
      const lifted = core.lifted ? ' (lifted)' : '';
      const colour = core.core.replace('-', ' and ');
      if (isStrip(system, core.farPart)) {
        const way = core.farMark === undefined ? 'the strip' : `terminal ${core.farMark}`;
        return `${colour} core to ${way}${lifted}`;
      }
      if (isOwnLead(core.far)) return `${core.farMark} lead of ${short}${lifted}`;
      return `${colour} core to ${short}${core.farMark === undefined ? '' : ` ${core.farMark}`}${lifted}`;
    }),
  );
}
