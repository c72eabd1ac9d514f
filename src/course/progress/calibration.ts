import type { Trial } from '../trial.ts';
import { byObjective, DAY, freshAnswers } from './answers.ts';
import { type Card, gradeOf, recallAt, review } from './revision.ts';

/** Reviews whose estimate lay in one range, and how they went. */
export interface Bin {
  /** The range of the estimate: from, and up to but not including `below`. */
  readonly from: number;
  readonly below: number;
  readonly answers: number;
  /** Mean estimate, and share that was right, 0 to 1. */
  readonly predicted: number;
  readonly happened: number;
}

export interface Calibration {
  /** Only ranges with answers. */
  readonly bins: readonly Bin[];
  readonly answers: number;
  readonly predicted: number;
  readonly happened: number;
  /** False while there is too little to say anything: fewer than 20 answers. */
  readonly enough: boolean;
}

/** Fewer than this many answers say nothing. Common practice. */
const ENOUGH = 20;
const EDGES = [0, 0.7, 0.8, 0.9, 0.95, 1.0001] as const;

const mean = (values: readonly number[]) =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * How the estimates of recall compare with what happened, by the learner's own log: each first answer at least a day
 * after the one before, with what was predicted for it from the answers before.
 * @param trials the whole log, in any order
 */
export function calibrationOf(trials: readonly Trial[]): Calibration {
  const pairs: { readonly predicted: number; readonly right: number }[] = [];
  for (const own of byObjective(trials).values()) {
    let card: Card | undefined;
    for (const trial of freshAnswers(own)) {
      if (card && trial.at - card.last >= DAY)
        pairs.push({ predicted: recallAt(card, trial.at), right: trial.right ? 1 : 0 });
      card = review(card, trial.at, gradeOf(trial));
    }
  }
  const sum = (among: typeof pairs) => ({
    answers: among.length,
    predicted: mean(among.map(({ predicted }) => predicted)),
    happened: mean(among.map(({ right }) => right)),
  });
  const bins = EDGES.slice(1).map((below, k) => {
    const from = EDGES[k] ?? 0;
    const within = pairs.filter(({ predicted }) => predicted >= from && predicted < below);
    return { from, below: Math.min(1, below), ...sum(within) };
  });
  return {
    bins: bins.filter(({ answers }) => answers > 0),
    ...sum(pairs),
    enough: pairs.length >= ENOUGH,
  };
}
