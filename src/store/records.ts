import type { KeptVisit } from '../course/callouts/kept-visit.ts';
import type { Sitting } from '../course/coursework/work.ts';
import type { Mode, Trial } from '../course/trial.ts';
import type { Choices, Draft } from './store.ts';

/** Records as they come from the device, checked before anything is made of them. */

const MODES: readonly Mode[] = ['lesson', 'practice', 'revision', 'test-out', 'before', 'after', 'callout'];

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= 2000;
const isName = (value: unknown): value is string => isText(value) && value !== '';
const isTime = (value: unknown): value is number =>
  typeof value === 'number' && value >= 0 && value <= 8.64e15;
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && isTime(value);

export const isTrial = (value: unknown): value is Trial =>
  isObject(value) &&
  [value.objective, value.item, value.method].every(isName) &&
  [value.at, value.took].every(isTime) &&
  [value.attempt, value.hints, value.shown].every(isCount) &&
  typeof value.right === 'boolean' &&
  MODES.some((mode) => mode === value.mode);

export const isDraft = (value: unknown): value is Draft =>
  isObject(value) && isName(value.place) && isName(value.item) && isTime(value.at) && 'answer' in value;

/** What its acts say, whoever plays them sees: an act that a system does not allow for is refused there. */
export const isVisit = (value: unknown): value is KeptVisit =>
  isObject(value) &&
  [value.id, value.callout].every(isName) &&
  [value.at, value.took].every(isTime) &&
  typeof value.done === 'boolean' &&
  (value.said === undefined || isName(value.said)) &&
  Array.isArray(value.wheels) &&
  value.wheels.every(isName) &&
  Array.isArray(value.acts) &&
  value.acts.every((act) => isObject(act) && isName(act.do));

const isWork = (value: unknown): boolean =>
  isObject(value) &&
  isName(value.slot) &&
  [value.at, value.took].every(isTime) &&
  [value.attempt, value.hints].every(isCount) &&
  typeof value.right === 'boolean' &&
  ((value.kind === 'question' && isName(value.item) && isObject(value.answer)) ||
    (value.kind === 'job' && Array.isArray(value.wires)) ||
    (value.kind === 'visit' && isName(value.callout) && isName(value.said) && Array.isArray(value.acts)));

/** What its coursework and its works say, whoever opens or grades it sees. */
export const isSitting = (value: unknown): value is Sitting =>
  isObject(value) &&
  isName(value.id) &&
  [value.begun, value.at].every(isTime) &&
  isObject(value.learner) &&
  isName(value.learner.code) &&
  isObject(value.coursework) &&
  isName(value.coursework.id) &&
  Array.isArray(value.coursework.tasks) &&
  Array.isArray(value.work) &&
  value.work.every(isWork);

/** The choices that can be read; others are passed over. */
export function readChoices(value: unknown): Choices {
  if (!isObject(value)) return {};
  const { route, assessment, help, last } = value;
  const isLast = isObject(last) && isName(last.path) && isName(last.title) && isTime(last.at);
  return {
    ...(isName(route) && { route }),
    ...(isText(assessment) && /^\d{4}-\d{2}-\d{2}$/.test(assessment) && { assessment }),
    ...(help === 'off' && { help }),
    ...(isLast && { last: last as unknown as NonNullable<Choices['last']> }),
  };
}

/** What tells one trial from another. */
export const trialKey = ({ at, objective, item, attempt }: Trial): string =>
  JSON.stringify([at, objective, item, attempt]);
