import { STAGE_VIEWS, type StageView } from '../../../course/stage.ts';
import { viewName } from '../../stage/sizes.ts';

/** Every choice of one drawing, and of two beside each other. */
const choices: readonly (readonly StageView[])[] = [
  ...STAGE_VIEWS.map((view) => [view]),
  ...STAGE_VIEWS.flatMap((one, k) => STAGE_VIEWS.slice(k + 1).map((other) => [one, other])),
];

/** A choice in one word, for lists to choose from; empty for none. */
export const viewWord = (views: readonly StageView[]): string =>
  STAGE_VIEWS.filter((view) => views.includes(view)).join('+');

export const viewsOf = (word: string): readonly StageView[] =>
  choices.find((views) => viewWord(views) === word) ?? [];

export const viewOptions = choices.map((views) => ({
  value: viewWord(views),
  says: views.map((view) => viewName[view]).join(' and '),
}));
