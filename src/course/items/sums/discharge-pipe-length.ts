import { type Outlet, TABLE_3_1 } from '../../../engine/plant/discharge-pipe.ts';
import { between, compare, type Sum, sayer } from './kit.ts';

const METRES = sayer('m', 1);
const OUTLETS: readonly Outlet[] = ['G 1/2', 'G 3/4', 'G 1'];

/** The longest run of D2 in one size, elbows taken off (Approved Document G, Table 3.1). */
export const dischargePipeLength: Sum = {
  id: 'discharge-pipe-length',
  title: 'How long may the discharge pipe be?',
  make(random, level) {
    const outlet = level === 1 ? 'G 1/2' : random.pick(OUTLETS);
    const rows = TABLE_3_1[outlet].d2;
    const row = random.pick(rows);
    // Some run is always left: at least a metre.
    const most = Math.floor((row.limit - 1) / row.elbow);
    const elbows = between(random, 2, Math.min(level === 3 ? 9 : 6, most), 1);
    const other = random.pick(rows.filter(({ elbow }) => elbow !== row.elbow));
    const taken = elbows * row.elbow;
    const value = row.limit - taken;
    const run = `a valve with a ${outlet} outlet, ${row.size} mm pipe and ${elbows} elbows`;
    const sum = `${row.limit} − ${elbows} × ${row.elbow}`;
    return {
      ask: `A safety valve has a ${outlet} outlet. Its D2 is ${row.size} mm copper with ${elbows} elbows. How long may the straight run of D2 be at most?`,
      unit: 'm',
      accepts: ['m', 'metres', 'metre', 'meters'],
      value,
      tolerance: 0.05,
      slips: [
        {
          value: row.limit,
          cause: `${METRES(row.limit)} is the table’s length for ${row.size} mm with no elbow at all. The ${elbows} elbows take ${METRES(taken)} off it.`,
          consequence: `A run of ${METRES(row.limit)} with ${elbows} elbows counts as ${METRES(row.limit + taken)}. The pipe holds back the water that the valve must let out.`,
          look: `Look at the last column of the table: ${row.elbow} m for each elbow in ${row.size} mm.`,
        },
        {
          value: row.limit + taken,
          cause: `You added the ${elbows} elbows to the limit: ${row.limit} + ${METRES(taken)}. Elbows hold the water back, so they come off.`,
          consequence: `A pipe of ${METRES(row.limit + taken)} would be ${METRES(2 * taken)} too long.`,
          look: `Does an elbow make room for more pipe, or use some up? Then ${sum}.`,
        },
        {
          value: row.limit - elbows * other.elbow,
          cause: `You took ${other.elbow} m for an elbow. That is the figure for ${other.size} mm, and this pipe is ${row.size} mm.`,
          consequence: `You would lay the run by the wrong row: ${METRES(row.limit - elbows * other.elbow)} instead of ${METRES(value)}.`,
          look: `Find the row for ${row.size} mm, and read the elbow in that row: ${row.elbow} m.`,
        },
        {
          value: row.limit - row.elbow,
          cause: `You took one elbow off, ${row.elbow} m. There are ${elbows}.`,
          consequence: `The other ${elbows - 1} still hold the water back: your run would count as ${METRES(row.limit + taken - row.elbow)}, and ${row.limit} m is allowed.`,
          look: `Count the elbows along D2 from the tundish to the end: ${elbows}.`,
        },
        {
          value: taken,
          cause: `${METRES(taken)} is what the ${elbows} elbows use up. The question asks what is left for straight pipe.`,
          consequence: `You would stop the run at ${METRES(taken)}, where the table allows ${METRES(value)}.`,
          look: `Take the ${METRES(taken)} off the limit for ${row.size} mm: ${sum}.`,
        },
      ],
      wrong: (given) => ({
        cause: `${compare(given, value, METRES)} For ${run}: ${sum}.`,
        consequence:
          given > value
            ? `${METRES(given)} of pipe with ${elbows} elbows counts as ${METRES(given + taken)}, over the ${row.limit} m of the table. Water that must get out is held back.`
            : `You would choose a larger pipe or another place for the cylinder, though ${METRES(value)} is allowed, not just ${METRES(given)}.`,
        look: `Table 3.1, outlet ${outlet}, row ${row.size} mm: limit ${row.limit} m, each elbow ${row.elbow} m. Your ${METRES(given)} should be what is left.`,
      }),
      hints: [
        `Find the row for a ${outlet} outlet and ${row.size} mm pipe in the table of discharge pipes.`,
        'Every elbow uses up some of the length that the row allows.',
        `${elbows} elbows at ${row.elbow} m each use up ${METRES(taken)}.`,
      ],
      steps: [
        `The row for ${outlet} and ${row.size} mm allows ${row.limit} m of straight pipe.`,
        `Each elbow takes ${row.elbow} m: ${elbows} × ${row.elbow} = ${METRES(taken)}.`,
        `What is left for the run: ${sum} = ${METRES(value)}.`,
      ],
    };
  },
};
