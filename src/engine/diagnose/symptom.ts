import { makeRandom, type Random } from '../model/random.ts';
import { bitsOf } from '../model/system.ts';
import type { Wire } from '../model/wiring.ts';
import type { Bench } from './bench.ts';
import type { Callout, Complaint } from './callout.ts';
import type { Candidate } from './candidate.ts';
import { ask, sameOutcome } from './evidence.ts';
import { arrive } from './setup.ts';
import { type Sign, signsOf, walk } from './signs.ts';
import { enter, type World } from './world.ts';

export { type Family, families, familyOf } from './family.ts';

/**
 * What a customer without tools notices of a fault: up to `most` complaints, the most telling first; the same for the
 * same seed. The first is not as it should be; the others may be: "the hot water is fine". Empty when the fault shows
 * nothing.
 */
export function complaintsOf(
  bench: Bench,
  wires: readonly Wire[],
  fault: Candidate,
  seed: number,
  most = 3,
): Complaint[] {
  const random = makeRandom(seed);
  const signs = signsOf(bench, wires, fault, random.int(1 << 30));
  const wrong = simplest(signs.filter((sign) => sign.wrong));
  const main = leading(wrong, random);
  if (!main) return [];
  const others = [...alsoWrong(main, wrong, signs, random), ...allRight(main, signs, random)];
  const told = [main, ...others].slice(0, most);
  return told.map(({ settings, after, test, outcome }) => ({
    settings,
    ...(after && { after }),
    test,
    outcome,
  }));
}

/** Of the signs that say the same of the same part, the one with the simplest settings. */
const simplest = (signs: readonly Sign[]): Sign[] => [
  ...new Map([...signs].reverse().map((sign) => [`${sign.part} ${sign.outcome}`, sign])).values(),
];

const rank = ({ heat, called, settings }: Sign): number =>
  // Heat first; what stays cold when called before what is hot uncalled; then the simplest settings.
  (heat ? 0 : 1000) + (called ? 0 : 100) + Object.keys(settings).length;

/** What is complained of first; of signs as telling, the seed takes one. */
function leading(wrong: readonly Sign[], random: Random): Sign | undefined {
  const best = Math.min(...wrong.map(rank));
  const first = wrong.filter((sign) => rank(sign) === best);
  return first.length === 0 ? undefined : random.pick(first);
}

/** What else is not as it should be, and where heat fails, whether anything runs. */
function alsoWrong(main: Sign, wrong: readonly Sign[], signs: readonly Sign[], random: Random): Sign[] {
  const size = (sign: Sign) => Object.keys(sign.settings).length;
  // What is wrong only together with another call, and right by itself, says more about that call.
  const byItself = (sign: Sign) =>
    !signs.some((one) => one.part === sign.part && one.called && !one.wrong && size(one) < size(sign));
  const others = wrong.filter((sign) => sign.part !== main.part && sign.heat === main.heat && byItself(sign));
  // The least like the first: the hot water where the heating was named.
  const shared = (sign: Sign) => Object.keys(main.settings).filter((id) => id in sign.settings).length;
  const [other] = random.shuffle(others).sort((a, b) => shared(a) - size(a) - (shared(b) - size(b)));
  if (!other) return [];
  const heatFails = main.heat && main.called && !main.outcome;
  const here = JSON.stringify(main.settings);
  const runs = signs.find((sign) => !sign.heat && !sign.after && JSON.stringify(sign.settings) === here);
  return heatFails && runs ? [other, runs] : [other];
}

/** What is as it should be and was called for: other calls first, then the same one together with others. */
function allRight(main: Sign, signs: readonly Sign[], random: Random): Sign[] {
  const right = simplest(
    signs.filter(({ wrong, heat, called, outcome }) => !wrong && heat && called && outcome),
  );
  const others = right.filter(({ part }) => part !== main.part);
  const same = right.filter(({ part }) => part === main.part);
  return [...random.shuffle(others).slice(0, 1), ...same, ...random.shuffle(others).slice(1)];
}

/** Whether a candidate explains a complaint: its system may stand so under those settings. */
export function explains(
  bench: Bench,
  wires: readonly Wire[],
  candidate: Candidate,
  complaint: Complaint,
): boolean {
  return agrees(bench, wires, candidate, complaint, new Map());
}

/** The same; `known` keeps how the candidate stands under settings met before. */
function agrees(
  bench: Bench,
  wires: readonly Wire[],
  candidate: Candidate,
  { settings, after, test, outcome }: Complaint,
  known: Map<string, World>,
): boolean {
  const { system } = bench;
  const cold = arrive(system, wires, {});
  const path = [...(after ? [bitsOf(system, after)] : []), bitsOf(system, settings)];
  const world = known.get(path.join()) ?? walk(bench, cold, candidate, path);
  known.set(path.join(), world);
  return world.stands.map(ask(cold, test)).some((shown) => sameOutcome(test, outcome, shown));
}

/** The candidates that explain every complaint, each as it may stand on arrival. The true one is always among them. */
export function sharing(
  bench: Bench,
  candidates: readonly Candidate[],
  { wires, complaints, found }: Pick<Callout, 'wires' | 'complaints' | 'found'>,
): World[] {
  const setup = arrive(bench.system, wires, found);
  return candidates.flatMap((candidate) => {
    const known = new Map<string, World>();
    if (!complaints.every((complaint) => agrees(bench, wires, candidate, complaint, known))) return [];
    return [known.get(String(setup.inputs)) ?? enter(bench, setup, candidate)];
  });
}
