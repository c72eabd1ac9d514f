import { dischargePipe, type Outlet, TABLE_3_1 } from '../../../engine/plant/discharge-pipe.ts';
import { between, type Sum, sayer, sayLines } from './kit.ts';

const METRES = sayer('m', 1);
const MM = sayer('mm', 0);
const OUTLETS: readonly Outlet[] = ['G 1/2', 'G 3/4', 'G 1'];

/** The smallest D2 of Table 3.1 that will do (Approved Document G). */
export const dischargePipeSize: Sum = {
  id: 'discharge-pipe-size',
  title: 'Which size of discharge pipe?',
  make(random, level) {
    const outlet = level === 1 ? 'G 1/2' : random.pick(OUTLETS);
    const { d1, d2: rows } = TABLE_3_1[outlet];
    // A run that some size takes: on the way to 27 m less what the elbows of the largest size use up.
    const elbows = between(random, 1, 6, 1);
    const largest = rows.at(-1) ?? { limit: 27, elbow: 0 };
    const run = between(random, 2, Math.floor(largest.limit - elbows * largest.elbow) - 1, 0.5);
    const worked = dischargePipe(outlet, run, elbows);
    const value = worked.value.d2 ?? 0;
    const bare = rows.find(({ limit }) => limit >= run)?.size ?? 0;
    const pipe = `${run} m with ${elbows} ${elbows === 1 ? 'elbow' : 'elbows'}`;
    const row = (size: number) => rows.find((one) => one.size === size);
    const counts = (size: number) => run + elbows * (row(size)?.elbow ?? 0);
    const slips = [
      ...(bare === value || bare === 0
        ? []
        : [
            {
              value: bare,
              cause: `${MM(bare)} would do for ${run} m of straight pipe. With ${elbows} ${elbows === 1 ? 'elbow' : 'elbows'} it counts as ${METRES(counts(bare))}, and ${row(bare)?.limit ?? 0} m is the limit.`,
              consequence: `Through ${MM(bare)} the water backs up, and may spill at the tundish as steam and scalding water.`,
              look: `Add ${elbows} times ${row(bare)?.elbow ?? 0} m to the run before you compare it with the ${row(bare)?.limit ?? 0} m.`,
            },
          ]),
      {
        value: d1,
        cause: `${MM(d1)} is D1, from the valve to the tundish. D2, after the tundish, is at least one size larger.`,
        consequence: `A D2 of ${MM(d1)} is no larger than the valve’s outlet: air and water cannot both get down it, and it overflows at the tundish.`,
        look: `Look for D2 behind the tundish: the table starts it at ${MM(rows[0]?.size ?? 0)} for ${outlet}.`,
      },
    ];
    return {
      ask: `A safety valve has a ${outlet} outlet. D2 will run ${pipe}, in copper. What is the smallest size that will do?`,
      unit: 'mm',
      accepts: ['mm', 'millimetres', 'millimeters', 'mil'],
      value,
      tolerance: 0.4,
      slips,
      wrong(given) {
        const tried = row(Math.round(given));
        if (!tried)
          return {
            cause: `For a ${outlet} outlet the table has no ${MM(given)}: D2 is ${rows.map(({ size }) => size).join(', ')} mm. For ${pipe} it is ${MM(value)}.`,
            consequence:
              given < value
                ? `${MM(given)} is smaller than the table allows here: the water would back up.`
                : `You would look in vain for ${MM(given)}, or fit far more pipe than needed.`,
            look: `Table 3.1, the rows for ${outlet}: try each size in turn, ${MM(rows[0]?.size ?? 0)} first.`,
          };
        const counted = counts(tried.size);
        return tried.size < value
          ? {
              cause: `In ${MM(tried.size)} this pipe counts as ${METRES(counted)}: ${run} + ${elbows} × ${tried.elbow}. The limit is ${tried.limit} m.`,
              consequence: `${MM(tried.size)} is ${METRES(counted - tried.limit)} too long for what the valve lets out: water and steam come back at the tundish.`,
              look: `Compare ${METRES(counted)} with ${tried.limit} m in the row for ${MM(tried.size)}.`,
            }
          : {
              cause: `${MM(tried.size)} would carry it. But ${MM(value)} does too: there it counts as ${METRES(counts(value))}, and ${row(value)?.limit ?? 0} m is allowed.`,
              consequence: `It is safe, but you would buy and fix ${MM(tried.size)} pipe where ${MM(value)} is enough.`,
              look: `Try the sizes from the smallest up, and stop at the first that passes: ${MM(value)}, not ${MM(tried.size)}.`,
            };
      },
      hints: [
        `Start with the smallest D2 for a ${outlet} outlet.`,
        'The run and what the elbows count as must together not pass the limit of the row.',
        `In ${MM(rows[0]?.size ?? 0)} this pipe counts as ${METRES(counts(rows[0]?.size ?? 0))}.`,
      ],
      steps: [...sayLines(worked), `So D2 is ${MM(value)}.`],
    };
  },
};
