import { type Outlet, TABLE_3_1 } from '../../../engine/plant/discharge-pipe.ts';
import { between, compare, type Sum, sayer } from './kit.ts';

const METRES = sayer('m', 1);
const OUTLETS: readonly Outlet[] = ['G 1/2', 'G 3/4', 'G 1'];

/** The length that a discharge pipe counts as, with its elbows (Approved Document G, Table 3.1). */
export const pipeElbows: Sum = {
  id: 'pipe-elbows',
  title: 'How long does the discharge pipe count as?',
  make(random, level) {
    const outlet = level === 1 ? 'G 1/2' : random.pick(OUTLETS);
    const rows = TABLE_3_1[outlet].d2;
    const row = random.pick(rows);
    const other = random.pick(rows.filter(({ elbow }) => elbow !== row.elbow));
    const run = between(random, 2, 14, 0.5);
    const elbows = between(random, 2, level === 3 ? 9 : 5, 1);
    const taken = elbows * row.elbow;
    const value = run + taken;
    const sum = `${run} + ${elbows} × ${row.elbow}`;
    return {
      ask: `D2 is ${row.size} mm copper, behind a valve with a ${outlet} outlet. It runs ${run} m and has ${elbows} elbows. How long does it count as?`,
      unit: 'm',
      accepts: ['m', 'metres', 'metre', 'meters'],
      value,
      tolerance: 0.05,
      slips: [
        {
          value: run,
          cause: `${METRES(run)} is the pipe alone. The ${elbows} elbows count as ${METRES(taken)} more.`,
          consequence: `You would call a pipe short enough by ${METRES(taken)} too easily.`,
          look: `Count the elbows along D2: ${elbows}. Each counts as ${row.elbow} m in ${row.size} mm.`,
        },
        {
          value: run + elbows * other.elbow,
          cause: `You took ${other.elbow} m for an elbow, the figure for ${other.size} mm. This pipe is ${row.size} mm.`,
          consequence: `You would judge ${row.size} mm by the row for ${other.size} mm: ${METRES(run + elbows * other.elbow)} instead of ${METRES(value)}.`,
          look: `Read the elbow in the row for ${row.size} mm: ${row.elbow} m.`,
        },
        {
          value: run - taken,
          cause: `You took the elbows off the run: ${run} − ${METRES(taken)}. Elbows make a pipe count as longer.`,
          consequence: `A pipe with many bends would seem the shortest of all: ${METRES(run - taken)}.`,
          look: `Does an elbow help the water along, or hold it back? Then ${sum}.`,
        },
        {
          value: run + elbows,
          cause:
            row.elbow === 1
              ? `You counted each elbow as 1 m.`
              : `You counted each elbow as 1 m. In ${row.size} mm it is ${row.elbow} m.`,
          consequence: `${METRES(run + elbows)} differs from ${METRES(value)}: on a long run that decides which size fits.`,
          look: `The last column of the table, row ${row.size} mm: ${row.elbow} m.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, METRES)} Run and elbows together: ${sum}.`,
        consequence:
          given < value
            ? `At ${METRES(given)} you might pass a size that is too small: the water would be held back.`
            : `At ${METRES(given)} you might fit a larger pipe than the table asks for.`,
        look: `Write the run first, ${run} m, then ${elbows} times ${row.elbow} m. Where does your ${METRES(given)} leave that?`,
      }),
      hints: [
        `Find what one elbow counts as in ${row.size} mm for a ${outlet} outlet.`,
        'Every elbow counts as some more straight pipe.',
        `${elbows} elbows count as ${METRES(taken)}.`,
      ],
      steps: [
        `In ${row.size} mm an elbow counts as ${row.elbow} m.`,
        `${elbows} × ${row.elbow} = ${METRES(taken)}.`,
        `With the run: ${sum} = ${METRES(value)}.`,
      ],
    };
  },
};
