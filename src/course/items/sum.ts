import { figure } from '../../engine/model/figure.ts';
import { makeRandom } from '../random.ts';
import { addressOf, type Maker } from '../task.ts';
import { judgeNumber } from './number.ts';
import { findSum } from './sums/index.ts';

/** Places that keep a figure of the working well inside the tolerance of its answer. */
const places = (tolerance: number): number => Math.max(0, Math.ceil(-Math.log10(tolerance)) + 1);

/** A sum with numbers of its own: the answer is typed with its unit. */
export const sum: Maker = {
  id: 'sum',
  title: 'Work it out',
  needs: 'sum',
  produces: true,
  make(_shelf, task, seed, level) {
    const kind = findSum(task.sum ?? '');
    const one = kind.make(makeRandom(seed), level);
    const { ask, unit, accepts, hints, steps, value, tolerance } = one;
    return {
      id: addressOf(task, seed, level),
      method: `sum:${kind.id}`,
      ask,
      form: { kind: 'number', unit, accepts },
      hints,
      steps,
      answer: { kind: 'number', typed: `${figure(value, places(tolerance))} ${unit}` },
      judge: (answer) => judgeNumber(answer.kind === 'number' ? answer.typed : '', one),
    };
  },
};
