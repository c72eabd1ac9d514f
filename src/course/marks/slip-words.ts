import { partOf, type System } from '../../engine/model/system.ts';
import type { Wire } from '../../engine/model/wiring.ts';
import { capital } from '../../engine/rules/words.ts';
import { FREE_WAY, isWay, type Slip } from './own-numbers.ts';

/** An end of a wire in words: "terminal 7", "the boiler's SL", "a way of its own". */
function sayEnd(system: System, end: string): string {
  if (end === FREE_WAY) return 'a way of its own';
  const mark = end.slice(end.indexOf('/') + 1);
  if (isWay(system, end)) return `terminal ${mark}`;
  const node = system.nodeOf.get(end);
  return node === undefined ? end : `${partOf(system, node).name} ${mark}`;
}

/** A wire with its lead first, where one end is a way of a strip. */
const leadFirst = (system: System, [a, b]: Wire): Wire =>
  a === FREE_WAY || isWay(system, a) ? [b, a] : [a, b];

/** A slip in words: "Boiler SL is in terminal 5; it belongs in terminal 8." */
export const saySlip = (system: System, slip: Slip): string => capital(inWords(system, slip));

function inWords(system: System, { there, missing }: Slip): string {
  const [lead, place] = there ? leadFirst(system, there) : [];
  const [wanted, home] = missing ? leadFirst(system, missing) : [];
  const say = (end: string | undefined) => (end === undefined ? '' : sayEnd(system, end));
  if (lead === undefined)
    return `${say(wanted)} is not landed where it should be: it belongs in ${say(home)}.`;
  if (wanted === undefined) return `${say(lead)} is joined to ${say(place)}, and should not be.`;
  if (wanted === lead) return `${say(lead)} is in ${say(place)}; it belongs in ${say(home)}.`;
  return `${say(lead)} is joined to ${say(place)}; instead ${say(wanted)} should be joined to ${say(home)}.`;
}
