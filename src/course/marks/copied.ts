import type { Flag } from './flag.ts';
import type { SlipsByCircuit, Turn } from './piece.ts';
import { sure } from './sure.ts';
import { sayCount, sayList } from './words.ts';

/** A learner's code with their work. */
export interface Worker {
  readonly code: string;
  readonly turns: readonly Turn[];
}

interface Owned {
  readonly code: string;
  readonly turn: Turn;
}

/** A wrong circuit that more learners than this share of the class made is the class's mistake, not one of two people. */
const COMMON = 0.2;
/** In a small class, more than so many. */
const FEW = 3;
/** So many wires wrong in the same way are worth a question. */
const MANY = 3;

/**
 * Where work looks alike across learners.
 * @param slips how much is wrong with a circuit; one that is not known yet counts as one slip
 */
export function copiedFlags(workers: readonly Worker[], slips: SlipsByCircuit = new Map()): Flag[] {
  const wired = workers.flatMap(({ code, turns }) =>
    turns.flatMap((turn): Owned[] => (turn.wiring && turn.wiring.moved > 0 ? [{ code, turn }] : [])),
  );
  const alike = sameWirings(wired);
  return [...forAnother(workers), ...alike.flags, ...sameSlips(wired, alike.seen, workers.length, slips)];
}

/** Work that was made for somebody else's questions, strip or fault. */
function forAnother(workers: readonly Worker[]): Flag[] {
  return workers.flatMap(({ code, turns }) => {
    const made = turns.filter(
      ({ marked, whose }) =>
        marked.made === 'for another' || (marked.made === 'unknown' && (marked.right || whose !== undefined)),
    );
    return [...Map.groupBy(made, ({ slot }) => slot)].map(([slot, own]): Flag => {
      const whose = [...new Set(own.flatMap((turn) => turn.whose ?? []))].filter((one) => one !== code);
      // Where nothing was locked, a strip wired anew may come near to another learner's start by chance.
      const isSure = own.some(({ marked }) => marked.made === 'for another');
      const little = `Little is left of what ${code} was given to start with.`;
      const says =
        whose.length > 0
          ? isSure
            ? `This work fits what ${sayList(whose)} was given, not what ${code} was given. Ask both.`
            : `${little} Most of it fits what ${sayList(whose)} was given. On a small strip that may be chance. Ask.`
          : isSure
            ? `This work does not fit what ${code} was given, nor what anybody else here was. Ask where it comes from.`
            : `${little} It may have been stripped and wired anew. Ask.`;
      return { kind: 'another', weight: isSure ? 'strong' : 'look', code, others: whose, slot, says };
    });
  });
}

const jobOf = ({ turn }: Owned, print: string) => `${turn.slot} ${print}`;

/** Wires that keep so much more of one learner's start than of another's were made on the first one's strip. */
const FITS_BETTER = 0.25;
/** Whoever mends one mistake leaves at least so much as it was. */
const FITS = 0.7;

/**
 * The same wires in the same numbers, though the learners' strips are numbered otherwise. On a small strip that can come
 * about by chance, where each still fits its own start: then nothing is said.
 */
function sameWirings(wired: readonly Owned[]): { flags: Flag[]; seen: ReadonlySet<string> } {
  const flags: Flag[] = [];
  const seen = new Set<string>();
  for (const own of Map.groupBy(wired, (one) => jobOf(one, sure(one.turn.wiring).wiring)).values()) {
    const codes = [...new Set(own.map(({ code }) => code))];
    const homes = new Set(own.map(({ turn }) => sure(turn.wiring).home));
    if (codes.length < 2 || homes.size < 2) continue;
    const byFit = [...own].sort((a, b) => sure(b.turn.wiring).kept - sure(a.turn.wiring).kept);
    const [best, worst] = [sure(byFit[0]), sure(byFit.at(-1))];
    const isStrange = sure(worst.turn.wiring).kept < FITS;
    if (!isStrange || sure(best.turn.wiring).kept - sure(worst.turn.wiring).kept < FITS_BETTER) continue;
    for (const code of codes) {
      const { turn } = sure(own.find((one) => one.code === code));
      const others = codes.filter((one) => one !== code);
      seen.add(`${code} ${turn.slot}`);
      flags.push({
        kind: 'same-wiring',
        weight: 'strong',
        code,
        others,
        slot: turn.slot,
        says: `Wire for wire the same numbers as ${sayList(others)}, though each was given a strip numbered otherwise. It fits what ${best.code} was given. Ask ${codes.length === 2 ? 'both' : 'them'}.`,
      });
    }
  }
  return { flags, seen };
}

/** The same wrong circuit once the numbers are put aside. */
function sameSlips(
  wired: readonly Owned[],
  seen: ReadonlySet<string>,
  classSize: number,
  slips: SlipsByCircuit,
): Flag[] {
  const wrong = wired.filter(({ turn }) => !turn.marked.right && turn.marked.rules.length > 0);
  const flags: Flag[] = [];
  const said = new Set<string>();
  for (const own of Map.groupBy(wrong, (one) => jobOf(one, sure(one.turn.wiring).circuit)).values()) {
    const codes = [...new Set(own.map(({ code }) => code))];
    if (codes.length < 2 || codes.length > Math.max(FEW, classSize * COMMON)) continue;
    for (const code of codes) {
      const { turn } = sure(own.find((one) => one.code === code));
      const place = `${code} ${turn.slot}`;
      const others = codes.filter((one) => one !== code);
      if (seen.has(place) || said.has(`${place} ${others}`)) continue;
      said.add(`${place} ${others}`);
      const count = slips.get(sure(turn.wiring).circuit)?.length ?? 1;
      const how =
        count < 2
          ? 'One slip is easily shared: by itself this means little.'
          : `${sayCount(count, 'wire')} are wrong in the same way: the more there are, the less it is chance. They may have worked together.`;
      flags.push({
        kind: 'same-slip',
        weight: count >= MANY ? 'look' : 'weak',
        code,
        others,
        slot: turn.slot,
        says: `The same wrong circuit as ${sayList(others)}, numbers put aside. ${how}`,
      });
    }
  }
  return flags;
}
