import type { Interaction } from '../report.ts';
import { responseOf } from '../scorm/responses.ts';
import { duration } from '../time.ts';
import type { ContextTemplate, LaunchData, LaunchQuery } from './launch.ts';

/** The verbs that are used (cmi5 9.3), and `answered` of the general list. */
const VERBS = {
  initialized: 'http://adlnet.gov/expapi/verbs/initialized',
  completed: 'http://adlnet.gov/expapi/verbs/completed',
  passed: 'http://adlnet.gov/expapi/verbs/passed',
  failed: 'http://adlnet.gov/expapi/verbs/failed',
  terminated: 'http://adlnet.gov/expapi/verbs/terminated',
  answered: 'http://adlnet.gov/expapi/verbs/answered',
} as const;
export type Verb = keyof typeof VERBS;

const CMI5 = 'https://w3id.org/xapi/cmi5/context/categories/cmi5';
const MOVE_ON = 'https://w3id.org/xapi/cmi5/context/categories/moveon';
const MASTERY = 'https://w3id.org/xapi/cmi5/context/extensions/masteryscore';

export interface Statement {
  readonly id: string;
  readonly verb: { readonly id: string; readonly display: Readonly<Record<string, string>> };
  readonly [other: string]: unknown;
}

interface Result {
  readonly score?: { readonly scaled: number };
  readonly success?: boolean;
  readonly completion?: boolean;
  readonly duration?: string;
  readonly response?: string;
}

/** Makes the statements of one session. */
export interface Writer {
  /**
   * A statement that cmi5 defines.
   * @param score 0 to 1, of `passed` and `failed`; left out where it would contradict the verb (cmi5 9.5.1)
   * @param length milliseconds since the session began
   */
  readonly defined: (
    verb: Exclude<Verb, 'answered'>,
    at: number,
    length?: number,
    score?: number,
  ) => Statement;
  /** A statement that cmi5 allows between `initialized` and `terminated`. */
  readonly answered: (interaction: Interaction) => Statement;
}

const isList = (data: unknown): data is readonly unknown[] => Array.isArray(data);

/** @param freshId a UUID, another one at each call */
export function makeWriter(
  { actor, activityId, registration }: LaunchQuery,
  { contextTemplate, masteryScore }: LaunchData,
  freshId: () => string,
): Writer {
  const verb = (name: Verb) => ({ id: VERBS[name], display: { en: name } });
  /** The template, and what is added to it; nothing of it is written over (cmi5 10, contextTemplate). */
  const context = (
    categories: readonly string[],
    extra: Readonly<Record<string, unknown>> = {},
  ): ContextTemplate => {
    const { contextActivities = {}, extensions = {} } = contextTemplate;
    const given = contextActivities.category;
    const category = [
      ...(isList(given) ? given : given === undefined ? [] : [given]),
      ...categories.map((id) => ({ objectType: 'Activity', id })),
    ];
    return {
      ...contextTemplate,
      registration,
      contextActivities: { ...contextActivities, ...(category.length > 0 && { category }) },
      extensions: { ...extra, ...extensions },
    };
  };
  const resultOf = (name: Verb, length: number, score: number | undefined): Result | undefined => {
    const time = { duration: duration(length) };
    const isFit =
      score !== undefined &&
      (masteryScore === undefined || (name === 'passed' ? score >= masteryScore : score < masteryScore));
    const marks = isFit ? { score: { scaled: Number(score.toFixed(4)) } } : {};
    if (name === 'passed') return { ...marks, success: true, ...time };
    if (name === 'failed') return { ...marks, success: false, ...time };
    if (name === 'completed') return { completion: true, ...time };
    return name === 'terminated' ? time : undefined;
  };
  return {
    defined: (name, at, length = 0, score) => {
      const result = resultOf(name, length, score);
      const judges = name === 'passed' || name === 'failed';
      const moves = judges || name === 'completed';
      const mark = judges && masteryScore !== undefined ? { [MASTERY]: masteryScore } : {};
      return {
        id: freshId(),
        actor,
        verb: verb(name),
        object: { objectType: 'Activity', id: activityId },
        ...(result && { result }),
        context: context(moves ? [CMI5, MOVE_ON] : [CMI5], mark),
        timestamp: new Date(at).toISOString(),
      };
    },
    answered: ({ objective, says, kind, right, at, took, ...rest }) => {
      const { type, response } = responseOf({ kind, ...rest });
      const result: Result = {
        success: right,
        duration: duration(took),
        ...(response !== undefined && { response }),
      };
      const part = objective.replace(/[^A-Za-z0-9_-]/g, '-');
      return {
        id: freshId(),
        actor,
        verb: verb('answered'),
        object: {
          objectType: 'Activity',
          id: `${activityId}${activityId.includes('#') ? '/' : '#'}${part}-${type}`,
          definition: {
            type: 'http://adlnet.gov/expapi/activities/cmi.interaction',
            description: { 'en-GB': says },
            interactionType: type,
          },
        },
        result,
        context: context([]),
        timestamp: new Date(at).toISOString(),
      };
    },
  };
}
